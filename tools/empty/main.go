// Command empty does nothing. Compiled with the core's flags it is what Go
// itself weighs in the browser, which tools/size measures the site against.
package main

func main() {}
