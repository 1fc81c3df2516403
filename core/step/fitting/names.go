package fitting

// gradeNames are what the answers call a grade.
var gradeNames = [...]string{unmeasured: "not measured", sound: "right", doubtful: "too close to call", amiss: "wrong"}
