"""Chapter noise: what is heard at the seats when nothing plays."""
