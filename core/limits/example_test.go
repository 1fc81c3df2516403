package limits_test

import (
	"fmt"

	"pintwelve/core/limits"
)

// A bearing seat of 25 mm to k5 and a housing of 52 mm to N7, as ISO 286-2 has
// them (values from memory).
func ExampleParse() {
	for _, row := range []struct {
		class string
		mm    float64
	}{{"k5", 25}, {"N7", 52}} {
		class, err := limits.Parse(row.class)
		if err != nil {
			fmt.Println(err)
			return
		}
		low, high, err := class.Limits(row.mm)
		fmt.Printf("%v at %g mm: %g to %g µm, %v\n", class, row.mm, low, high, err)
	}
	// Output:
	// k5 at 25 mm: 2 to 11 µm, <nil>
	// N7 at 52 mm: -39 to -9 µm, <nil>
}
