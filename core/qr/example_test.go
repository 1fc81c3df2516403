package qr_test

import (
	"fmt"

	"pintwelve/core/qr"
)

// 17 bytes fill version 1 at level L, 21 modules a side; 18 want version 2.
func ExampleCode() {
	fmt.Println(len(qr.Code("seventeen letters")), len(qr.Code("seventeen letters.")), qr.Code(string(make([]byte, 2954))) == nil)
	// Output: 21 25 true
}
