package pseudo

import "testing"

func TestScript(t *testing.T) {
	for text, want := range map[string]string{
		"import { a } from \"../a b\";\n":                                  "import { a } from \"../a b\";\n",
		`x: "A cap", y: "cap",`:                                            `x: "Áá cááp", y: "cap",`,
		"x: (n) => `${n} caps${n === \"one\" ? `, of ${n} Ends` : \"\"}`,": "x: (n) => `${n} cááps${n === \"one\" ? `, óóf ${n} Éénds` : \"\"}`,",
		`"SAE-8": "SAE grade",`:                                            `"SAE-8": "SÁáÉé gráádéé",`,
		"x: \"one\\u00a0Air\",":                                            "x: \"óónéé\\u00a0Ááíír\",",
	} {
		if got := script(text); got != want {
			t.Errorf("%s gives\n%s, want\n%s", text, got, want)
		}
	}
}

func TestWords(t *testing.T) {
	const text, want = "See {rows} in [the list](list).", "[Séééé {rows} íín [théé lííst](list).]"
	if got := Words(text); got != want {
		t.Errorf("%s gives %s, want %s", text, got, want)
	}
}
