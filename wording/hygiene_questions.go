package wording

// hygieneQuestions ask for each fact in a grower's words, and stand in letters
// and on the card at the bed.
var hygieneQuestions = Table{
	"hygiene.stake":                   {"Tea put on {applied}. Do not pick before {until}.", "Té aplicado el {applied}. No coseche antes del {until}."},
	"hygiene.letter.sign":             {"Name, date, signature: ______________________", "Nombre, fecha, firma: ______________________"},
	"hygiene.letter.compost-supplier": {"We brew tea from compost that you sold us, and need the following for our records (21 CFR 112.60(b)). Lot: ______________", "Preparamos té con compost que usted nos vendió, y necesitamos lo siguiente para nuestros registros (21 CFR 112.60(b)). Lote: ______________"},
	"hygiene.letter.water-laboratory": {"Please test the water we brew with, 100 mL, chilled and started within 8 h, and report the method and its limit of detection.", "Pedimos analizar el agua con que preparamos, 100 mL, enfriada y empezada dentro de 8 h, e informar el método y su límite de detección."},
	"hygiene.letter.certifier":        {"We mean to use compost tea on certified ground and ask for your decision.", "Queremos usar té de compost en terreno certificado y pedimos su decisión."},

	"hygiene.question.material":       {"What is the liquid made from: finished compost, worm castings, raw manure, or what drained out of a pile?", "¿De qué está hecho el líquido: compost terminado, humus de lombriz, estiércol crudo, o lo que escurrió de una pila?"},
	"hygiene.question.animal_origin":  {"Did anything in the compost come from animals: manure, bedding, fish, shell, table waste?", "¿Vino algo del compost de animales: estiércol, cama, pescado, concha, restos de comida?"},
	"hygiene.question.human_waste":    {"Is there human waste in any part of it?", "¿Hay desechos humanos en alguna parte?"},
	"hygiene.question.treatment":      {"How was it treated: by a validated process, as hot compost, or neither?", "¿Cómo se trató: con un proceso validado, como compost caliente, o ninguno?"},
	"hygiene.question.process_record": {"Is there a record of time, temperature and turns, or a supplier's document of the last 12 months?", "¿Hay un registro de tiempo, temperatura y volteos, o un documento del proveedor de los últimos 12 meses?"},
	"hygiene.question.nop_compost":    {"Does the compost meet 7 CFR 205.203(c)(2) or NOP 5021?", "¿Cumple el compost 7 CFR 205.203(c)(2) o NOP 5021?"},
	"hygiene.question.contaminated":   {"After treatment, did animals, flood water, shared tools or a failed test dirty it?", "Después del tratamiento, ¿lo ensuciaron animales, una inundación, herramientas compartidas o una prueba fallida?"},
	"hygiene.question.additives":      {"What food for microbes goes into the brew?", "¿Qué alimento para microbios lleva el té?"},
	"hygiene.question.held":           {"How long from mixing with water to the last load?", "¿Cuánto tiempo desde mezclar con agua hasta la última carga?"},
	"hygiene.question.water":          {"Where does the brew water come from?", "¿De dónde viene el agua?"},
	"hygiene.question.water_ecoli":    {"Was generic E. coli found in 100 mL of the brew water?", "¿Se encontró E. coli genérica en 100 mL del agua?"},
	"hygiene.question.sanitized":      {"Were brewer, lines and sprayer sanitized before this batch: by whom, when, with what?", "¿Se desinfectaron preparador, mangueras y aspersor antes de esta tanda: quién, cuándo, con qué?"},
	"hygiene.question.pretest":        {"Did two batches of this system pass the pre-test?", "¿Pasaron dos tandas de este sistema la prueba previa?"},
	"hygiene.question.pathogens":      {"Was compost or tea tested for Salmonella, E. coli O157:H7 or Listeria, and was any found?", "¿Se probó el compost o el té de Salmonella, E. coli O157:H7 o Listeria, y se encontró alguna?"},
	"hygiene.question.crop_use":       {"What is the crop for: fresh food, grain, sprouts, or not for people to eat?", "¿Para qué es el cultivo: alimento fresco, grano, brotes, o no para comer?"},
	"hygiene.question.market":         {"Is the crop sold or for your own use?", "¿La cosecha se vende o es para su uso?"},
	"hygiene.question.covered":        {"Do farm and crop fall under 21 CFR 112 (112.2 to 112.5: produce eaten raw, yearly sales, qualified exemption)? You decide, not the program.", "¿Están la finca y el cultivo bajo 21 CFR 112 (112.2 a 112.5: productos que se comen crudos, ventas anuales, exención calificada)? Lo decide usted, no el programa."},
	"hygiene.question.organic":        {"Is this ground certified organic or in transition?", "¿Este terreno es orgánico certificado o está en transición?"},
	"hygiene.question.edible_part":    {"Where does the part people eat grow: in the soil, touching it, or clear of it?", "¿Dónde crece la parte que se come: en el suelo, tocándolo, o lejos de él?"},
	"hygiene.question.method":         {"Is it sprayed on leaves, poured on the soil, or given by drip?", "¿Se asperja en las hojas, se vierte en el suelo, o se da por goteo?"},
	"hygiene.question.contact_during": {"Can this application touch the part people eat?", "¿Puede esta aplicación tocar la parte que se come?"},
	"hygiene.question.contact_after":  {"Can it be touched later, by splash, drip or wet leaves?", "¿Puede tocarse después, por salpicaduras, goteo u hojas mojadas?"},
	"hygiene.question.applied":        {"On which day is it put on?", "¿Qué día se aplica?"},
	"hygiene.question.harvest":        {"On which day is the first harvest planned?", "¿Qué día está prevista la primera cosecha?"},
}
