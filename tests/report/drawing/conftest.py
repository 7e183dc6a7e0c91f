"""What the tests of the drawing share is beside them."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
