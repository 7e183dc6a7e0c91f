"""Lets the case modules of all chapters import the rooms they share."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
