package link

import "strings"

// mostMangled is how many bytes of mangled link are looked at: each sign of the
// longest may come percent-encoded.
const mostMangled = 4 * MaxText

// mostTurns is how often percent-encoding is undone: each hand that a link goes
// through may do it once.
const mostTurns = 8

// digitsIn returns the digits of base64url in a text, as many as a link may
// have, with percent-encoding undone. Chats and mails put line breaks, quote
// marks and signs of their own between and behind, none of which is a digit.
func digitsIn(text string) string {
	const escape = digits + "%"
	text = only(escape, text)
	for range mostTurns {
		plain := only(escape, unescape(text))
		if plain == text {
			break
		}
		text = plain
	}
	text = only(digits, text)
	return text[:min(len(text), MaxText)]
}

// only returns a text without what isn't among signs.
func only(signs, text string) string {
	found := make([]byte, 0, len(text))
	for i := range len(text) {
		if strings.IndexByte(signs, text[i]) >= 0 {
			found = append(found, text[i])
		}
	}
	return string(found)
}

// unescape undoes percent-encoding, RFC 3986 section 2.1, once.
func unescape(text string) string {
	out := make([]byte, 0, len(text))
	for i := 0; i < len(text); i++ {
		b := text[i]
		if b == '%' && i+2 < len(text) {
			if high, low := hexDigit(text[i+1]), hexDigit(text[i+2]); high >= 0 && low >= 0 {
				b = byte(high<<4 | low)
				i += 2
			}
		}
		out = append(out, b)
	}
	return string(out)
}

// hexDigit returns a hexadecimal digit's value, -1 for any other sign.
func hexDigit(c byte) int {
	v := strings.IndexByte("0123456789abcdefABCDEF", c)
	if v > 15 {
		v -= 6
	}
	return v
}
