package link

import "strings"

// header is how many bytes stand before the body.
const header = 5

// seal puts the envelope round a body.
func seal(version byte, body []byte) string {
	s := sum(version, body)
	return toText(append([]byte{version, byte(s >> 24), byte(s >> 16), byte(s >> 8), byte(s)}, body...))
}

// open takes the envelope off; ok is false where it isn't whole.
func open(text string) (version byte, body []byte, ok bool) {
	sealed, ok := fromText(text)
	if !ok || len(sealed) < header {
		return 0, nil, false
	}
	version, body = sealed[0], sealed[header:]
	given := uint32(sealed[1])<<24 | uint32(sealed[2])<<16 | uint32(sealed[3])<<8 | uint32(sealed[4])
	return version, body, given == sum(version, body)
}

// sum is the CRC-32 of IEEE 802.3 over the version and the body, bit by bit: a
// link is short, and a table would weigh more than it saves.
func sum(version byte, body []byte) uint32 {
	crc := sumOn(^uint32(0), version)
	for _, b := range body {
		crc = sumOn(crc, b)
	}
	return ^crc
}

func sumOn(crc uint32, b byte) uint32 {
	crc ^= uint32(b)
	for range 8 {
		crc = crc>>1 ^ 0xEDB88320&-(crc&1)
	}
	return crc
}

// digits are base64url's, RFC 4648 table 2.
const digits = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"

// toText writes bytes in base64url without padding: six bits a digit, the last
// filled up with noughts.
func toText(data []byte) string {
	r := bitReader{bytes: data}
	text := make([]byte, 0, (8*len(data)+5)/6)
	for len(text) < cap(text) {
		text = append(text, digits[r.get(6)])
	}
	return string(text)
}

// fromText reads them back; ok is false for any text that toText writes for no
// bytes, so that no two texts are one link.
func fromText(text string) (data []byte, ok bool) {
	var w bitWriter
	for i := range len(text) {
		d := strings.IndexByte(digits, text[i])
		if d < 0 {
			return nil, false
		}
		w.put(uint64(d), 6)
	}
	data = w.bytes[:6*len(text)/8]
	return data, toText(data) == text
}
