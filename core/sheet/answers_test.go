package sheet

import "pintwelve/core/form"

// thou is one, in mm.
const thou = 0.0254

func with(f, changes form.Form) form.Form { return f.With(changes) }
