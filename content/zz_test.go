package content
import ("testing";"strings";"time")
func TestZZ(t *testing.T){
	for _,l:=range []string{"yaml","json","sh","md","go"}{ for _,u:=range []string{"{","- a: ","\"","[[","a: b\n","'","`","*_","#"} {
		code:=strings.Repeat(u, 30000/len(u)); s:=time.Now(); coloured(l,code); if d:=time.Since(s); d>300*time.Millisecond {t.Log(l,u,d)} }}
}
