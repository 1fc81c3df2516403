package link

import (
	"math/bits"
	"slices"
	"unicode/utf8"

	"pintwelve/core/form"
)

// How a text is written: 0, 10, 110, 111.
const (
	inFigures = iota // every byte is one of the figures
	asChoice         // its place in the field's list
	inWords          // by the letters' code
	plain            // its length and its bytes
)

// mannerOf picks the one manner in which a text is written, a choice apart.
func mannerOf(text string) int {
	if _, ok := figures.size(text); ok {
		return inFigures
	}
	coded, _ := words.size(text)
	if coded < 2*bits.Len(uint(len(text)))-1+8*len(text) {
		return inWords
	}
	return plain
}

// choices are the texts that a field writes by their place in the list, which
// may only grow at its end.
func choices(f *form.Field) []string {
	if f.Kind == form.Tick {
		return []string{"yes"}
	}
	return f.Choices
}

func writeText(w *bitWriter, f *form.Field, text string) {
	if i := slices.Index(choices(f), text); i >= 0 {
		w.put(0b10, 2)
		w.gamma(uint64(i) + 1)
		return
	}
	switch mannerOf(text) {
	case inFigures:
		w.put(0b0, 1)
		figures.write(w, text)
	case inWords:
		w.put(0b110, 3)
		words.write(w, text)
	case plain:
		w.put(0b111, 3)
		w.gamma(uint64(len(text)))
		for i := range len(text) {
			w.put(uint64(text[i]), 8)
		}
	}
}

// readText reads a text; the kind is 0, Damaged or Newer. A text of a choice's
// list may stand spelled out: the list may have grown since.
func readText(r *bitReader, f *form.Field) (text string, wrong Kind) {
	manner := inFigures
	for manner < plain && r.bit() == 1 {
		manner++
	}
	switch manner {
	case inFigures:
		text = figures.read(r)
	case asChoice:
		i := r.gamma() - 1
		if r.short {
			return "", Damaged
		}
		if i >= uint64(len(choices(f))) {
			return "", Newer
		}
		return choices(f)[i], 0
	case inWords:
		text = words.read(r)
	case plain:
		text = readPlain(r)
	}
	if r.short || mannerOf(text) != manner || !clean(text) {
		return "", Damaged
	}
	if len(text) > f.Long {
		return "", Newer
	}
	return text, 0
}

func readPlain(r *bitReader) string {
	n := r.gamma()
	if n > uint64(len(r.bytes)) {
		r.short = true
		return ""
	}
	text := make([]byte, n)
	for i := range text {
		text[i] = byte(r.get(8))
	}
	return string(text)
}

// clean says whether a text is text: UTF-8 without control characters, but for
// tabs and ends of lines, which people paste.
func clean(text string) bool {
	for _, c := range text {
		if c < ' ' && c != '\t' && c != '\n' && c != '\r' || c >= 0x7f && c < 0xa0 {
			return false
		}
	}
	return utf8.ValidString(text)
}
