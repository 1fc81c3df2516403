package link

import "strings"

// header is how many bytes stand before the body.
const header = 5

// seal puts the envelope round a body.
func seal(version byte, body []byte) string {
	s := sum(version, body)
	return toText(append([]byte{version, byte(s >> 24), byte(s >> 16), byte(s >> 8), byte(s)}, body...))
}

// open takes the envelope off what may have more behind it: the link ends at
// the furthest place where its checksum holds. ok is false where it holds at none.
func open(text string) (version byte, body []byte, ok bool) {
	sealed := fromText(text)
	if len(sealed) < header {
		return 0, nil, false
	}
	given := uint32(sealed[1])<<24 | uint32(sealed[2])<<16 | uint32(sealed[3])<<8 | uint32(sealed[4])
	version = sealed[0]
	crc := sumOn(^uint32(0), version)
	for end := header; ; end++ {
		// No two texts are one link: the bits that fill the last digit are noughts.
		if ^crc == given && strings.HasPrefix(text, toText(sealed[:end])) {
			body, ok = sealed[header:end], true
		}
		if end == len(sealed) {
			return version, body, ok
		}
		crc = sumOn(crc, sealed[end])
	}
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

// fromText reads digits back, as many bytes as they make.
func fromText(text string) []byte {
	var w bitWriter
	for i := range len(text) {
		w.put(uint64(strings.IndexByte(digits, text[i])), 6)
	}
	return w.bytes[:6*len(text)/8]
}
