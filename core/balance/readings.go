package balance

import "slices"

// clone returns a job that shares no reading with j.
func (j Job) clone() Job {
	j.Before.Cylinders = slices.Clone(j.Before.Cylinders)
	j.After.Cylinders = slices.Clone(j.After.Cylinders)
	j.Weighed = slices.Clone(j.Weighed)
	return j
}

// readings returns where every reading of the scale stands in j. A weight that
// is alike before and after is one part weighed once; 0 was not weighed.
func (j *Job) readings() [][]*float64 {
	before, after := j.Before.readings(), j.After.readings()
	var all [][]*float64
	for i, b := range before {
		if i < len(after) && *after[i] == *b {
			all = append(all, []*float64{b, after[i]})
			continue
		}
		all = append(all, []*float64{b})
		if i < len(after) {
			all = append(all, []*float64{after[i]})
		}
	}
	for i := len(before); i < len(after); i++ {
		all = append(all, []*float64{after[i]})
	}
	for i := range j.Weighed {
		all = append(all, []*float64{&j.Weighed[i].HungG}, []*float64{&j.Weighed[i].Heavy.WeightG})
	}
	return slices.DeleteFunc(all, func(r []*float64) bool { return *r[0] == 0 })
}

func (p *Parts) readings() []*float64 {
	all := []*float64{&p.BearingG, &p.CrankpinG}
	for i := range p.Cylinders {
		c := &p.Cylinders[i]
		all = append(all, &c.PistonG, &c.RingsG, &c.GudgeonPinG, &c.ClipsG, &c.Rod.SmallG, &c.Rod.BigG, &c.Rod.WholeG)
	}
	return all
}
