package drill

import (
	"math/rand"
	"testing"

	"pintwelve/core/clock"
)

// BenchmarkBothWheels is the size that the page must stand: 24 drills, up to 8
// holes, both wheels.
func BenchmarkBothWheels(b *testing.B) {
	for _, row := range []struct {
		name  string
		total clock.Vec
	}{
		{"1 hole each", clock.Vec{T: -2400, N: 150}},
		{"2 holes", clock.Vec{T: -7800, N: 900}},
		{"3 holes", clock.Vec{T: -12000, N: 900}},
		{"6 holes", clock.Vec{T: -24800, N: 900}},
		{"7 holes", clock.Vec{T: -26500, N: 900}},
		{"out of reach", clock.Vec{T: -50000, N: 900}},
	} {
		b.Run(row.name, func(b *testing.B) {
			left, right := flywheel(row.total.Scale(0.5)), flywheel(row.total.Scale(0.5))
			left.ToleranceGMM /= 2
			right.ToleranceGMM, right.ThickMM = left.ToleranceGMM, 24.5 // so that each wheel has to be planned
			holes := 0
			for b.Loop() {
				for _, wheel := range [...]Task{left, right} {
					p, err := wheel.Plan()
					if err != nil {
						b.Fatal(err)
					}
					holes = len(p.Holes)
				}
			}
			b.ReportMetric(float64(holes), "holes/wheel")
		})
	}
}

func BenchmarkFrees(b *testing.B) {
	task := flywheel(clock.Vec{T: -16000, N: 450})
	for b.Loop() {
		if _, err := task.Relaxations(); err != nil {
			b.Fatal(err)
		}
	}
}

// benchTasks are problems that the brute force finishes too, of up to four holes.
func benchTasks() []Task {
	rng := rand.New(rand.NewSource(21))
	var tasks []Task
	for len(tasks) < 20 {
		t := smallTask(rng)
		t.MostHoles, t.AngleStepDeg, t.DepthStepMM, t.DrillsMM = 4, 7.5, 3, []float64{7, 9.5, 12}
		if _, err := t.Plan(); err == nil {
			tasks = append(tasks, t)
		}
	}
	return tasks
}

// BenchmarkPlanBesideBruteForce and BenchmarkBruteForce do the same problems.
func BenchmarkPlanBesideBruteForce(b *testing.B) {
	tasks := benchTasks()
	for b.Loop() {
		for _, t := range tasks {
			if _, err := t.Plan(); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func BenchmarkBruteForce(b *testing.B) {
	tasks := benchTasks()
	for b.Loop() {
		for _, t := range tasks {
			newBrute(t).run()
		}
	}
}
