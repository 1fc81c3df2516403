// Package link turns a job into the text of a link and back: the form as typed,
// whole, in the fragment of an address, which no server ever sees.
//
// A link is base64url without padding (RFC 4648 §5) of
//
//	version, 1 byte | CRC-32 of version and body, 4 bytes | body
//
// and this envelope alone is frozen: whatever the body, a cut or altered link is
// told from a newer one, and one with more behind it is found whole. body.go says how the body of version 1 is laid out. A
// link once given opens for ever, so that the code that reads a version only
// ever gains, and a field's number and the place of a choice in its list are
// never used again.
package link

import (
	"strings"

	"pintwelve/core/form"
)

// MaxText is how many bytes of link are read or written.
const MaxText = 16384

// version is that of the links that Encode writes.
const version = 1

// table is what a link needs to know of the fields.
type table interface {
	Fields() []form.Field
	Lookup(name string) (field *form.Field, keys []string, ok bool)
}

// Encode writes a job as a link. One job has one link. The error is an *Error of
// kind Unknown, Unfit, TooBig or Crowded.
func Encode(f form.Form) (string, error) {
	if err := crowded(f); err != nil {
		return "", err
	}
	return encode(form.Job, f)
}

// Decode reads a link, whatever signs that are none of its digits a chat or a mail
// has put between and behind: the checksum decides where it ends. The error is an *Error of kind NotLink, Damaged, Newer,
// TooBig or Crowded.
func Decode(text string) (form.Form, error) {
	f, err := decode(form.Job, text)
	if err == nil {
		err = crowded(f)
	}
	if err != nil {
		return nil, err
	}
	return f, nil
}

func crowded(f form.Form) error {
	if crowds := form.Crowds(f); crowds != nil {
		return &Error{Kind: Crowded, Name: crowds[0].String()}
	}
	return nil
}

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
	found := digitsIn(text[:min(len(text), mostMangled)])
	made, body, ok := open(found)
	switch {
	case !ok && len(found) == MaxText && len(text) > MaxText:
		return nil, &Error{Kind: TooBig}
	case !ok && !looksLike(found):
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

// looksLike says whether digits that are no whole link are taken for a part of
// one: versions 0 to 3 begin with an A, and the page's own anchors don't.
func looksLike(found string) bool { return strings.HasPrefix(found, "A") }
