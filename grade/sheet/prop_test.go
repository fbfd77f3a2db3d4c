package sheet_test
import ("testing";"os";"encoding/json";"example.com/ribface/grade/sheet")
func TestProp(t *testing.T){
 for _,n:=range []string{"plant","university","europe","floats"} {
  f,_:=os.Open("testdata/"+n+".csv")
  p,err:=sheet.Propose(f)
  b,_:=json.MarshalIndent(p,"","  ")
  t.Log(n,string(b),err)
 }
}
