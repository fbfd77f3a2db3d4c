package main

import "syscall/js"

func main() {
	text := func(f func([]byte) []byte) js.Func {
		return js.FuncOf(func(_ js.Value, args []js.Value) any {
			in := ""
			if len(args) > 0 && args[0].Type() == js.TypeString {
				in = args[0].String()
			}
			return string(f([]byte(in)))
		})
	}
	js.Global().Set("ribface", map[string]any{
		"assess":  text(assess),
		"choices": text(func([]byte) []byte { return choices() }),
	})
	select {} // the functions stay for as long as the page
}
