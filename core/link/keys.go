package link

import (
	"slices"
	"sort"

	"pintwelve/core/form"
)

const figures36 = "0123456789abcdefghijklmnopqrstuvwxyz"

// keyNumber numbers the valid keys from 1 up, shorter ones first: a bijective
// numeral in base 36. Twelve figures fit 63 bits.
func keyNumber(key string) (n uint64) {
	for i := range len(key) {
		c := key[i]
		d := uint64(c-'0') + 1
		if c >= 'a' {
			d = uint64(c-'a') + 11
		}
		n = 36*n + d
	}
	return n
}

func numberKey(n uint64) string {
	var key [form.MaxKey]byte
	i := len(key)
	for ; n > 0; n = (n - 1) / 36 {
		i--
		key[i] = figures36[(n-1)%36]
	}
	return string(key[i:])
}

// maxKeyNumber is that of the last key.
const maxKeyNumber = (36*36*36*36*36*36*36*36*36*36*36*36 - 1) / 35 * 36

// settle sorts keys by their numbers, each once.
func settle(keys []string) []string {
	sort.SliceStable(keys, func(i, j int) bool { return keyNumber(keys[i]) < keyNumber(keys[j]) })
	return slices.Compact(keys)
}

func writeKeys(w *bitWriter, keys []string) {
	w.gamma(uint64(len(keys)) + 1)
	last := uint64(0)
	for _, key := range keys {
		n := keyNumber(key)
		w.wide(n - last)
		last = n
	}
}

// readKeys returns the keys in order, and false where they are damaged.
func readKeys(r *bitReader) (keys []string, ok bool) {
	last := uint64(0)
	for range r.gamma() - 1 {
		step := r.wide()
		if r.short || step > maxKeyNumber-last {
			return nil, false
		}
		last += step
		keys = append(keys, numberKey(last))
	}
	return keys, !r.short
}
