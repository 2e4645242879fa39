package stat

import "math"

// NormalCDF returns the chance that a standard normal number is at most z.
func NormalCDF(z float64) float64 { return .5 * math.Erfc(-z/math.Sqrt2) }
