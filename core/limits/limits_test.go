package limits

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ranges are the standard's ranges of nominal size, mm, with the intermediate
// ones of r and s.
var ranges = [][2]float64{{3, 6}, {6, 10}, {10, 18}, {18, 30}, {30, 50}, {50, 80}, {80, 120}, {120, 180}}

// inside returns sizes of a range: just above its lower end, about its middle,
// and its upper end, which belongs to it.
func inside(r [2]float64) []float64 {
	return []float64{math.Nextafter(r[0], r[1]), math.Sqrt(r[0] * r[1]), r[1]}
}

// Limits of ISO 286-2 for 3–6, 6–10, 10–18, 18–30, 30–50, 50–80, 80–120 and
// 120–180 mm, lower and upper deviation in µm, as published in the tables that
// bearing and drawing-office handbooks reprint: values from memory.
var published = []struct {
	class string
	rows  [8][2]Micron
}{
	{"H5", [8][2]Micron{{0, 5}, {0, 6}, {0, 8}, {0, 9}, {0, 11}, {0, 13}, {0, 15}, {0, 18}}},
	{"H6", [8][2]Micron{{0, 8}, {0, 9}, {0, 11}, {0, 13}, {0, 16}, {0, 19}, {0, 22}, {0, 25}}},
	{"H7", [8][2]Micron{{0, 12}, {0, 15}, {0, 18}, {0, 21}, {0, 25}, {0, 30}, {0, 35}, {0, 40}}},
	{"H8", [8][2]Micron{{0, 18}, {0, 22}, {0, 27}, {0, 33}, {0, 39}, {0, 46}, {0, 54}, {0, 63}}},
	{"F7", [8][2]Micron{{10, 22}, {13, 28}, {16, 34}, {20, 41}, {25, 50}, {30, 60}, {36, 71}, {43, 83}}},
	{"F8", [8][2]Micron{{10, 28}, {13, 35}, {16, 43}, {20, 53}, {25, 64}, {30, 76}, {36, 90}, {43, 106}}},
	{"G6", [8][2]Micron{{4, 12}, {5, 14}, {6, 17}, {7, 20}, {9, 25}, {10, 29}, {12, 34}, {14, 39}}},
	{"G7", [8][2]Micron{{4, 16}, {5, 20}, {6, 24}, {7, 28}, {9, 34}, {10, 40}, {12, 47}, {14, 54}}},
	{"JS6", [8][2]Micron{{-4, 4}, {-4.5, 4.5}, {-5.5, 5.5}, {-6.5, 6.5}, {-8, 8}, {-9.5, 9.5}, {-11, 11}, {-12.5, 12.5}}},
	{"JS7", [8][2]Micron{{-6, 6}, {-7.5, 7.5}, {-9, 9}, {-10.5, 10.5}, {-12.5, 12.5}, {-15, 15}, {-17.5, 17.5}, {-20, 20}}},
	{"J6", [8][2]Micron{{-3, 5}, {-4, 5}, {-5, 6}, {-5, 8}, {-6, 10}, {-6, 13}, {-6, 16}, {-7, 18}}},
	{"J7", [8][2]Micron{{-6, 6}, {-7, 8}, {-8, 10}, {-9, 12}, {-11, 14}, {-12, 18}, {-13, 22}, {-14, 26}}},
	{"J8", [8][2]Micron{{-8, 10}, {-10, 12}, {-12, 15}, {-13, 20}, {-15, 24}, {-18, 28}, {-20, 34}, {-22, 41}}},
	{"K5", [8][2]Micron{{-5, 0}, {-5, 1}, {-6, 2}, {-8, 1}, {-9, 2}, {-10, 3}, {-13, 2}, {-15, 3}}},
	{"K6", [8][2]Micron{{-6, 2}, {-7, 2}, {-9, 2}, {-11, 2}, {-13, 3}, {-15, 4}, {-18, 4}, {-21, 4}}},
	{"K7", [8][2]Micron{{-9, 3}, {-10, 5}, {-12, 6}, {-15, 6}, {-18, 7}, {-21, 9}, {-25, 10}, {-28, 12}}},
	{"K8", [8][2]Micron{{-13, 5}, {-16, 6}, {-19, 8}, {-23, 10}, {-27, 12}, {-32, 14}, {-38, 16}, {-43, 20}}},
	{"M6", [8][2]Micron{{-9, -1}, {-12, -3}, {-15, -4}, {-17, -4}, {-20, -4}, {-24, -5}, {-28, -6}, {-33, -8}}},
	{"M7", [8][2]Micron{{-12, 0}, {-15, 0}, {-18, 0}, {-21, 0}, {-25, 0}, {-30, 0}, {-35, 0}, {-40, 0}}},
	{"M8", [8][2]Micron{{-16, 2}, {-21, 1}, {-25, 2}, {-29, 4}, {-34, 5}, {-41, 5}, {-48, 6}, {-55, 8}}},
	{"N6", [8][2]Micron{{-13, -5}, {-16, -7}, {-20, -9}, {-24, -11}, {-28, -12}, {-33, -14}, {-38, -16}, {-45, -20}}},
	{"N7", [8][2]Micron{{-16, -4}, {-19, -4}, {-23, -5}, {-28, -7}, {-33, -8}, {-39, -9}, {-45, -10}, {-52, -12}}},
	{"N8", [8][2]Micron{{-20, -2}, {-25, -3}, {-30, -3}, {-36, -3}, {-42, -3}, {-50, -4}, {-58, -4}, {-67, -4}}},
	{"P6", [8][2]Micron{{-17, -9}, {-21, -12}, {-26, -15}, {-31, -18}, {-37, -21}, {-45, -26}, {-52, -30}, {-61, -36}}},
	{"P7", [8][2]Micron{{-20, -8}, {-24, -9}, {-29, -11}, {-35, -14}, {-42, -17}, {-51, -21}, {-59, -24}, {-68, -28}}},
	{"P8", [8][2]Micron{{-30, -12}, {-37, -15}, {-45, -18}, {-55, -22}, {-65, -26}, {-78, -32}, {-91, -37}, {-106, -43}}},
	{"f6", [8][2]Micron{{-18, -10}, {-22, -13}, {-27, -16}, {-33, -20}, {-41, -25}, {-49, -30}, {-58, -36}, {-68, -43}}},
	{"f7", [8][2]Micron{{-22, -10}, {-28, -13}, {-34, -16}, {-41, -20}, {-50, -25}, {-60, -30}, {-71, -36}, {-83, -43}}},
	{"g6", [8][2]Micron{{-12, -4}, {-14, -5}, {-17, -6}, {-20, -7}, {-25, -9}, {-29, -10}, {-34, -12}, {-39, -14}}},
	{"h6", [8][2]Micron{{-8, 0}, {-9, 0}, {-11, 0}, {-13, 0}, {-16, 0}, {-19, 0}, {-22, 0}, {-25, 0}}},
	{"js5", [8][2]Micron{{-2.5, 2.5}, {-3, 3}, {-4, 4}, {-4.5, 4.5}, {-5.5, 5.5}, {-6.5, 6.5}, {-7.5, 7.5}, {-9, 9}}},
	{"js6", [8][2]Micron{{-4, 4}, {-4.5, 4.5}, {-5.5, 5.5}, {-6.5, 6.5}, {-8, 8}, {-9.5, 9.5}, {-11, 11}, {-12.5, 12.5}}},
	{"j5", [8][2]Micron{{-2, 3}, {-2, 4}, {-3, 5}, {-4, 5}, {-5, 6}, {-7, 6}, {-9, 6}, {-11, 7}}},
	{"j6", [8][2]Micron{{-2, 6}, {-2, 7}, {-3, 8}, {-4, 9}, {-5, 11}, {-7, 12}, {-9, 13}, {-11, 14}}},
	{"j7", [8][2]Micron{{-4, 8}, {-5, 10}, {-6, 12}, {-8, 13}, {-10, 15}, {-12, 18}, {-15, 20}, {-18, 22}}},
	{"k5", [8][2]Micron{{1, 6}, {1, 7}, {1, 9}, {2, 11}, {2, 13}, {2, 15}, {3, 18}, {3, 21}}},
	{"k6", [8][2]Micron{{1, 9}, {1, 10}, {1, 12}, {2, 15}, {2, 18}, {2, 21}, {3, 25}, {3, 28}}},
	{"k8", [8][2]Micron{{0, 18}, {0, 22}, {0, 27}, {0, 33}, {0, 39}, {0, 46}, {0, 54}, {0, 63}}},
	{"m5", [8][2]Micron{{4, 9}, {6, 12}, {7, 15}, {8, 17}, {9, 20}, {11, 24}, {13, 28}, {15, 33}}},
	{"m6", [8][2]Micron{{4, 12}, {6, 15}, {7, 18}, {8, 21}, {9, 25}, {11, 30}, {13, 35}, {15, 40}}},
	{"n6", [8][2]Micron{{8, 16}, {10, 19}, {12, 23}, {15, 28}, {17, 33}, {20, 39}, {23, 45}, {27, 52}}},
	{"p6", [8][2]Micron{{12, 20}, {15, 24}, {18, 29}, {22, 35}, {26, 42}, {32, 51}, {37, 59}, {43, 68}}},
}

func TestPublishedLimits(t *testing.T) {
	for _, row := range published {
		for i, want := range row.rows {
			for _, size := range inside(ranges[i]) {
				assertLimits(t, row.class, size, want)
			}
		}
	}
}

func assertLimits(t *testing.T, class string, size float64, want [2]Micron) {
	t.Helper()
	c, err := Parse(class)
	require.NoError(t, err)
	lo, hi, err := c.Limits(size)
	require.NoError(t, err, class)
	assert.Equal(t, want, [2]Micron{lo, hi}, "%s at %g mm", class, size)
	one := Shaft
	if c.IsHole() {
		one = Hole
	}
	lo, hi, err = one(c.Letters, c.Grade, size)
	require.NoError(t, err, class)
	assert.Equal(t, want, [2]Micron{lo, hi}, "%s at %g mm", class, size)
}

// r and s use the intermediate ranges above 50 mm: values from memory.
func TestPublishedLimitsOfTheIntermediateRanges(t *testing.T) {
	for _, row := range []struct {
		in     [2]float64
		r6, s6 [2]Micron
		r7     [2]Micron
		R6, R7 [2]Micron
		R8     [2]Micron
	}{
		{[2]float64{3, 6}, [2]Micron{15, 23}, [2]Micron{19, 27}, [2]Micron{15, 27}, [2]Micron{-20, -12}, [2]Micron{-23, -11}, [2]Micron{-33, -15}},
		{[2]float64{6, 10}, [2]Micron{19, 28}, [2]Micron{23, 32}, [2]Micron{19, 34}, [2]Micron{-25, -16}, [2]Micron{-28, -13}, [2]Micron{-41, -19}},
		{[2]float64{10, 18}, [2]Micron{23, 34}, [2]Micron{28, 39}, [2]Micron{23, 41}, [2]Micron{-31, -20}, [2]Micron{-34, -16}, [2]Micron{-50, -23}},
		{[2]float64{18, 30}, [2]Micron{28, 41}, [2]Micron{35, 48}, [2]Micron{28, 49}, [2]Micron{-37, -24}, [2]Micron{-41, -20}, [2]Micron{-61, -28}},
		{[2]float64{30, 50}, [2]Micron{34, 50}, [2]Micron{43, 59}, [2]Micron{34, 59}, [2]Micron{-45, -29}, [2]Micron{-50, -25}, [2]Micron{-73, -34}},
		{[2]float64{50, 65}, [2]Micron{41, 60}, [2]Micron{53, 72}, [2]Micron{41, 71}, [2]Micron{-54, -35}, [2]Micron{-60, -30}, [2]Micron{-87, -41}},
		{[2]float64{65, 80}, [2]Micron{43, 62}, [2]Micron{59, 78}, [2]Micron{43, 73}, [2]Micron{-56, -37}, [2]Micron{-62, -32}, [2]Micron{-89, -43}},
		{[2]float64{80, 100}, [2]Micron{51, 73}, [2]Micron{71, 93}, [2]Micron{51, 86}, [2]Micron{-66, -44}, [2]Micron{-73, -38}, [2]Micron{-105, -51}},
		{[2]float64{100, 120}, [2]Micron{54, 76}, [2]Micron{79, 101}, [2]Micron{54, 89}, [2]Micron{-69, -47}, [2]Micron{-76, -41}, [2]Micron{-108, -54}},
		{[2]float64{120, 140}, [2]Micron{63, 88}, [2]Micron{92, 117}, [2]Micron{63, 103}, [2]Micron{-81, -56}, [2]Micron{-88, -48}, [2]Micron{-126, -63}},
		{[2]float64{140, 160}, [2]Micron{65, 90}, [2]Micron{100, 125}, [2]Micron{65, 105}, [2]Micron{-83, -58}, [2]Micron{-90, -50}, [2]Micron{-128, -65}},
		{[2]float64{160, 180}, [2]Micron{68, 93}, [2]Micron{108, 133}, [2]Micron{68, 108}, [2]Micron{-86, -61}, [2]Micron{-93, -53}, [2]Micron{-131, -68}},
	} {
		for _, size := range inside(row.in) {
			assertLimits(t, "r6", size, row.r6)
			assertLimits(t, "r7", size, row.r7)
			assertLimits(t, "s6", size, row.s6)
			assertLimits(t, "R6", size, row.R6)
			assertLimits(t, "R7", size, row.R7)
			assertLimits(t, "R8", size, row.R8)
		}
	}
}

// 3 mm itself belongs to the range up to 3 mm, where Δ is 0: values from memory.
func TestThreeMillimetres(t *testing.T) {
	for _, row := range []struct {
		class string
		want  [2]Micron
	}{
		{"H5", [2]Micron{0, 4}}, {"H7", [2]Micron{0, 10}}, {"H8", [2]Micron{0, 14}}, {"K6", [2]Micron{-6, 0}}, {"K7", [2]Micron{-10, 0}}, {"M7", [2]Micron{-12, -2}},
		{"N7", [2]Micron{-14, -4}}, {"P7", [2]Micron{-16, -6}}, {"R7", [2]Micron{-20, -10}}, {"J6", [2]Micron{-4, 2}}, {"J7", [2]Micron{-6, 4}},
		{"J8", [2]Micron{-8, 6}}, {"f7", [2]Micron{-16, -6}}, {"g6", [2]Micron{-8, -2}}, {"j6", [2]Micron{-2, 4}}, {"j7", [2]Micron{-4, 6}},
		{"j8", [2]Micron{-6, 8}}, {"k6", [2]Micron{0, 6}}, {"m6", [2]Micron{2, 8}}, {"n6", [2]Micron{4, 10}}, {"p6", [2]Micron{6, 12}},
		{"r6", [2]Micron{10, 16}}, {"s6", [2]Micron{14, 20}},
	} {
		assertLimits(t, row.class, 3, row.want)
	}
}

func TestEveryClassIsItsToleranceWide(t *testing.T) {
	for _, letters := range append(strings.Fields("f g h js k m n p r s"), strings.Fields("F G H JS K M N P R")...) {
		for grade := LowestGrade; grade <= HighestGrade; grade++ {
			for _, r := range ranges {
				for _, size := range inside(r) {
					lo, hi, err := (Class{letters, grade}).Limits(size)
					require.NoError(t, err)
					assert.Equal(t, standardTolerance(t, grade, size), hi-lo)
				}
			}
		}
	}
}
