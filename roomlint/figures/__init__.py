"""The computing: pure functions over numbers and arrays, one module a branch of physics."""
