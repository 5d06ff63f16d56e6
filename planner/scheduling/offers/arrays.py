"""Arrays: the numbers a season is chosen by, weighed many at once."""

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Whole = NDArray[np.int64]
