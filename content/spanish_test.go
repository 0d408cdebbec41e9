package content

import (
	"io/fs"
	"math"
	"net/url"
	"os"
	"regexp"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// spanish are the pages in Spanish, as a content folder of their own.
func spanish() fs.FS { return os.DirFS("es") }

// spanishEase is the reading ease for Spanish of José Fernández Huerta, Medidas sencillas
// de lecturabilidad, Consigna 214 (1959), which fits that of Flesch to Spanish words:
//
//	206.84 - 0.60 syllables in a hundred words - 1.02 words a sentence
//
// Title and numbers are recalled from memory. The second term is read as Flesch's is.
func spanishEase(prose []string) float64 {
	words, sentences, sounded := counted(prose, spanishSyllables)
	if words == 0 {
		return 100
	}
	return 206.84 - 0.60*100*sounded/words - 1.02*words/sentences
}

var (
	silentU     = strings.NewReplacer("qu", "q", "gue", "ge", "gué", "gé", "gui", "gi", "guí", "gí", "ü", "u")
	consonantY  = regexp.MustCompile(`y([aeiouáéíóú])`)
	silentH     = regexp.MustCompile(`([aeiouáéíóú])h([aeiouáéíóú])`)
	nucleus     = regexp.MustCompile(`[aeiouyáéíóú]+`)
	strongVowel = regexp.MustCompile(`[aeoáéó]`)
	alone       = regexp.MustCompile(`[aeoáéóíú]`) // with a strong vowel beside it
)

// spanishSyllables counts by the rules of Spanish spelling. A strong vowel (a, e, o) makes
// a syllable; a weak one (i, u, and y that ends a word) joins its neighbour, unless it is
// stressed beside a strong one. Two weak ones are one syllable. An h between vowels parts
// nothing.
func spanishSyllables(word string) int {
	w := silentU.Replace(strings.ToLower(word))
	w = consonantY.ReplaceAllString(w, "ñ$1")
	w = silentH.ReplaceAllString(w, "$1$2")
	n := 0
	for _, group := range nucleus.FindAllString(w, -1) {
		if strongVowel.MatchString(group) {
			n += len(alone.FindAllString(group, -1))
		} else {
			n++
		}
	}
	return max(n, 1)
}

// Syllables as the spelling rules of the Spanish academies divide the words: diphthongs,
// hiatus, a silent u, a sounded ü, y, and h between vowels.
func TestSpanishSyllables(t *testing.T) {
	for word, want := range map[string]int{
		"dado": 2, "cruceta": 3, "ranura": 3, "calibrador": 4, "micrómetro": 4, "medición": 3, "fuente": 2, "también": 2,
		"causa": 2, "peine": 2, "boina": 2, "deuda": 2, "aceite": 3, "ciudad": 2, "ruido": 2, "viuda": 2, "construir": 2, "cuídese": 3,
		"poeta": 3, "línea": 3, "aéreo": 4, "teatro": 3, "leer": 2, "alineado": 5,
		"guía": 2, "país": 2, "baúl": 2, "leído": 3, "aún": 2, "aun": 1, "período": 4, "construía": 3, "averiguáis": 4, "caían": 3,
		"horquilla": 3, "quien": 1, "que": 1, "guerra": 2, "sigue": 2, "seguí": 2, "agua": 2, "antigüedad": 4, "pingüino": 3, "averigüe": 4,
		"y": 1, "hoy": 1, "muy": 1, "mayo": 2, "ya": 1, "apoyo": 3, "Paraguay": 3,
		"ahora": 3, "rehacer": 3, "vehículo": 4, "búho": 2, "prohíbe": 3, "prohibir": 2, "hueco": 2,
		"Óxido": 3, "identificada": 6, "diámetro": 3, "mm": 1,
	} {
		if got := spanishSyllables(word); got != want {
			t.Errorf("%q: got %d syllables, want %d", word, got, want)
		}
	}
}

// Four words of seven syllables in one sentence: 206.84 - 0.60×175 - 1.02×4. And a passage
// as hard as the law writes falls through.
func TestSpanishEaseFormula(t *testing.T) {
	if got := spanishEase([]string{"El dado está limpio."}); math.Abs(got-97.76) > 1e-9 {
		t.Errorf("got %v, want 97.76", got)
	}
	hard := []string{"No obstante las consideraciones anteriormente mencionadas, la identificación de configuraciones intermedias " +
		"apropiadas necesita una verificación dimensional exhaustiva de todos los componentes individuales."}
	if got := spanishEase(hard); got >= 60 {
		t.Errorf("a hard passage scores %.1f, want less than 60", got)
	}
}

func TestSpanishReadingEase(t *testing.T) {
	checkEase(t, loaded(t, spanish()), spanishEase)
}

var spanishBasis = regexp.MustCompile(`(?i)uso común|memoria|inventad|nuestro criterio|de este cuadro|por definición|por su construcción|calculad|` +
	`un dueño|nota de un vendedor|guía de reparación|` +
	`DIN 86|JIS B 7516|S\.I\. 2016|ISO \d|ASME|ETMA|Dana|Freightliner|Land Rover|Toyota|Nissan|Mazda|Federal-Mogul|TM 5-3820|` +
	`Randy's Driveshaft|OSHA|CFR`)

func TestSpanishFiguresNameTheirBasis(t *testing.T) {
	checkBasis(t, guideOf(t, spanish()), spanishBasis)
}

func TestSpanishCautions(t *testing.T) {
	checkCautions(t, guideOf(t, spanish()), map[string][]string{
		"measure":               {"ruedas calzadas", "carga nominal", "punto muerto", "46 kg", "fuera de fase"},
		"measure/what-holds-it": {"protección para los ojos", "en línea con la prensa", "Nada de calor"},
		"measure/cap":           {"protección para los ojos", "en línea con la prensa", "Nada de calor"},
		"measure/across":        {"protección para los ojos", "ruedas calzadas", "fase"},
		"measure/over-caps":     {"protección para los ojos"},
		"measure/groove-inner":  {"protección para los ojos"},
		"measure/groove-outer":  {"protección para los ojos"},
		"measure/under-plates":  {"46 kg", "una sola vez"},
		"measure/half-round":    {"46 kg", "una sola vez"},
		"measure/wing":          {"46 kg", "ruedas calzadas", "una sola vez"},
		"measure/bare-yoke":     {"chatarra", "taller de cardanes"},
		"measure/conversion":    {"fase", "protección para los ojos"},
		"measure/cannot":        {"Nada de calor", "protección para los ojos"},
		"measure/removing": {"protección para los ojos", "ruedas calzadas", "46 kg", "Nada de calor", "fuera de fase", "29 CFR 1928.57",
			"49 CFR 393.89", "ISO 5674", "chatarra"},
		"measure/fitting":    {"protección para los ojos", "Nada de calor", "Equilibrar y soldar", "fase"},
		"measure/clips":      {"protección para los ojos"},
		"measure/tightening": {"una sola vez", "ruedas calzadas", "memoria"},
	})
}

// sureWord is what Spanish says for sure and for safe alike: no page says it of a joint, a
// figure or an answer. The glossary has it as a name of a clip.
var sureWord = regexp.MustCompile(`(?i)segur[oa]s?`)

func TestSpanishPagesCallNothingSafe(t *testing.T) {
	for _, p := range loaded(t, spanish()) {
		for _, b := range blocks(t, p) {
			if sureWord.MatchString(b.text) && p.Slug != "measure/glossary" {
				t.Errorf("%s: %q", p.Slug, b.text)
			}
		}
	}
}

// A heading in Spanish has the id of the English one: links to a place in a page lead to one that is there.
func TestSpanishPlacesAreThere(t *testing.T) {
	pages, problems := Load(os.DirFS("."), Options{Base: "/", Language: "es"})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	ids := map[string]map[string]bool{}
	for _, p := range pages {
		ids["/"+p.Slug+"/"] = idsOf(string(p.HTML))
	}
	seen := 0
	for _, p := range pages {
		for _, l := range p.Links {
			address, place, anchored := strings.Cut(l.Href, "#")
			if !anchored || !strings.HasPrefix(address, "/") {
				continue
			}
			seen++
			if id, err := url.PathUnescape(place); err != nil || !ids[address][id] {
				t.Errorf("%s: %s leads to no place", p.Slug, l.Href)
			}
		}
	}
	if seen < 5 {
		t.Errorf("only %d links to a place", seen)
	}
}

func idsOf(page string) map[string]bool {
	ids := map[string]bool{}
	z := html.NewTokenizer(strings.NewReader(page))
	for z.Next() != html.ErrorToken {
		for _, a := range z.Token().Attr {
			if a.Key == "id" {
				ids[a.Val] = true
			}
		}
	}
	return ids
}
