package link

// Kind is why a link could not be written or read.
type Kind uint8

// The kinds of fault.
const (
	NotLink Kind = iota + 1 // reading: this was never a link
	Damaged                 // reading: part of it is missing or altered
	Newer                   // reading: whole, but made by a version that knows more
	TooBig                  // either: longer than MaxText, or more than form.MaxNames names
	Crowded                 // either: a group has more rows than form.Crowds lets pass
	Unknown                 // writing: the table has no field of this name
	Unfit                   // writing: the text is too long for its field, or holds what is no text
)

// Error is a fault of a link, worded for the user.
type Error struct {
	Kind Kind
	Name string // of the field at fault, when writing; of a crowd what it is; else ""
}

func (e *Error) Error() string {
	switch e.Kind {
	case NotLink:
		return "This is not the link of a job."
	case Damaged:
		return "This link is damaged: part of it is missing or altered. Ask for it again."
	case Newer:
		return "This link was made by a newer version. Load the page again to bring this one up to date."
	case TooBig:
		return "This job is too big for a link. Send its file instead."
	case Crowded:
		return "The job of this link is too big: " + e.Name + "."
	case Unknown:
		return "No field is called “" + e.Name + "”, so that a link can't carry it."
	default:
		return "The text in “" + e.Name + "” is too long for a link, or holds characters that can't be seen."
	}
}
