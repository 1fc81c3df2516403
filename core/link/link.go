// Package link turns a job into the text of a link and back: the form as typed,
// whole, in the fragment of an address, which no server ever sees.
//
// A link is base64url without padding (RFC 4648 §5) of
//
//	version, 1 byte | CRC-32 of version and body, 4 bytes | body
//
// and this envelope alone is frozen: whatever the body, a cut or altered link is
// told from a newer one. body.go says how the body of version 1 is laid out. A
// link once given opens for ever, so that the code that reads a version only
// ever gains, and a field's number and the place of a choice in its list are
// never used again.
package link

import (
	"encoding/base64"
	"hash/crc32"
	"strings"

	"pintwelve/core/form"
)

// MaxText is how many bytes of link are read or written.
const MaxText = 16384

const (
	version  = 1
	envelope = 5 // bytes before the body
)

// table is what a link needs to know of the fields.
type table interface {
	Fields() []form.Field
	Lookup(name string) (field *form.Field, keys []string, ok bool)
}

// Encode writes a job as a link. One job has one link. The error is an *Error of
// kind Unknown, Unfit or TooBig.
func Encode(f form.Form) (string, error) { return encode(form.Job, f) }

// Decode reads a link. The error is an *Error of kind NotLink, Damaged, Newer or
// TooBig.
func Decode(text string) (form.Form, error) { return decode(form.Job, text) }

func encode(t table, f form.Form) (string, error) {
	body, fault := writeBody(t, f)
	if fault != nil {
		return "", fault
	}
	text := seal(version, body)
	if len(text) > MaxText {
		return "", &Error{Kind: TooBig}
	}
	return text, nil
}

func decode(t table, text string) (form.Form, error) {
	if len(text) > MaxText {
		return nil, &Error{Kind: TooBig}
	}
	made, body, ok := open(text)
	switch {
	case !ok && !looksLike(text):
		return nil, &Error{Kind: NotLink}
	case !ok || made < version:
		return nil, &Error{Kind: Damaged}
	case made > version:
		return nil, &Error{Kind: Newer}
	}
	f, fault := readBody(t, body)
	if fault != nil {
		return nil, fault
	}
	return f, nil
}

// seal puts the envelope round a body.
func seal(version byte, body []byte) string {
	s := sum(version, body)
	sealed := append([]byte{version, byte(s >> 24), byte(s >> 16), byte(s >> 8), byte(s)}, body...)
	return base64.RawURLEncoding.EncodeToString(sealed)
}

// open takes the envelope off; ok is false where it isn't whole.
func open(text string) (version byte, body []byte, ok bool) {
	if strings.ContainsAny(text, "\r\n") { // which base64 would pass over
		return 0, nil, false
	}
	sealed, err := base64.RawURLEncoding.Strict().DecodeString(text)
	if err != nil || len(sealed) < envelope {
		return 0, nil, false
	}
	version, body = sealed[0], sealed[envelope:]
	given := uint32(sealed[1])<<24 | uint32(sealed[2])<<16 | uint32(sealed[3])<<8 | uint32(sealed[4])
	return version, body, given == sum(version, body)
}

// sum is the CRC-32 (IEEE 802.3) of the version and the body.
func sum(version byte, body []byte) uint32 {
	return crc32.Update(crc32.ChecksumIEEE([]byte{version}), crc32.IEEETable, body)
}

// looksLike says whether a text that is no whole link is taken for a part of
// one: versions 0 to 3 begin with an A, and the page's own anchors don't.
func looksLike(text string) bool { return strings.HasPrefix(text, "A") }
