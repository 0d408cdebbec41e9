package tables
import ("testing";"os";"time")
func TestZ(t *testing.T){ s:=time.Now(); set,l:=Load(FS); t.Log(time.Since(s)); l.Print(os.Stderr); n:=0; for r:=range set.rows(){n++; _=r}; t.Log(n,l.Summary(), len(set.Sizes())); for _,g:=range set.Sizes(){ if len(g)>1 {for _,r:=range g {t.Log(r.Ref())}; t.Log("--")}}
 for _,id:=range []string{"1350","1355","30.2x92","22x55","2c","7260-to-1310"} { r:=set.Find(id); t.Log(id,refs(r.Twins),"same",refs(set.SameFigures(r)),"near",refs(set.Near(r,4)),"conv",refs(set.Conversions(r)))}}
func refs(rs []*Row) (o []string){for _,r:=range rs{o=append(o,r.ID)};return}
