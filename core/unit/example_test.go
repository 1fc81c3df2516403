package unit_test

import (
	"fmt"

	"pintwelve/core/unit"
)

// A bare figure takes the field's unit, a typed one beats it; 1 in is 25.4 mm by
// the agreement of 1959.
func ExampleParse() {
	for _, text := range []string{"2", "0,0508 mm", "1 5/8 in", "1,234"} {
		mm, err := unit.Parse(text, unit.Thou)
		fmt.Println(mm, err)
	}
	// Output:
	// 0.0508 <nil>
	// 0.0508 <nil>
	// 41.275 <nil>
	// 0 “1,234” could be 1.234 or 1234: write 1.234 (or 1,2340) or 1234
}

func ExampleFormat() {
	fmt.Println(unit.Format(0.0508, unit.Thou, 0.0127), unit.FormatHour(4.5, 5))
	// Output: 2 thou 4:30
}
