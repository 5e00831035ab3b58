package wording

// applicationSheets are the questions and answers of the application
// worksheets.
var applicationSheets = Table{
	"sheet.doses.purpose": {"How much tea do people put on?", "¿Cuánto té se suele aplicar?"},
	"sheet.doses.range":   {"undiluted tea; canopies 0.1 to 30 m high", "té sin diluir; copas de 0,1 a 30 m de alto"},
	"sheet.doses.answer":  {"{n} customary doses of undiluted tea; choose by use.", "{n} dosis habituales de té sin diluir; elija por uso."},
	"sheet.doses.between": {"For {use} people put on {low} to {high} of undiluted tea.", "Para {use} se suele aplicar de {low} a {high} de té sin diluir."},
	"sheet.doses.one":     {"For {use} people put on {rate} of undiluted tea.", "Para {use} se suele aplicar {rate} de té sin diluir."},

	"sheet.dilute.purpose": {"How much tea and how much water go in?", "¿Cuánto té y cuánta agua van?"},
	"sheet.dilute.range":   {"ratios up to 1:10000; total chlorine in the water 0 to 20 mg/L", "proporciones hasta 1:10000; cloro total en el agua de 0 a 20 mg/L"},
	"sheet.dilute.answer":  {"{tea} of tea and {water} of water make {total}: {mix}.", "{tea} de té y {water} de agua hacen {total}: {mix}."},

	"sheet.loads.purpose":     {"How many tank loads, and what goes in each?", "¿Cuántas cargas de tanque, y qué lleva cada una?"},
	"sheet.loads.range":       {"up to 10000 loads; a tank larger than its dead volume", "hasta 10000 cargas; un tanque mayor que su volumen muerto"},
	"sheet.loads.answer":      {"{n} {n|load|loads} of {tea} tea, filled to {size}: {mix}.", "{n} {n|carga|cargas} de {tea} de té, completando hasta {size}: {mix}."},
	"sheet.loads.answer.rest": {"{n} {n|load|loads}: {full} full of {tea} tea, filled to {size}, and a last one of {lasttea} tea, filled to {lastsize}: {mix}.", "{n} {n|carga|cargas}: {full} completas de {tea} de té, completando hasta {size}, y una última de {lasttea} de té, completando hasta {lastsize}: {mix}."},

	"sheet.trailer-weight.purpose": {"What will it weigh full?", "¿Cuánto pesará lleno?"},
	"sheet.trailer-weight.range":   {"liquids of 0.9 to 1.5 kg/L", "líquidos de 0,9 a 1,5 kg/L"},
	"sheet.trailer-weight.answer":  {"It weighs {total}, of which {liquid} is liquid.", "Pesa {total}, de los que {liquid} son líquido."},
	"sheet.trailer-weight.within":  {"It weighs {total}, {margin} under its plate.", "Pesa {total}, {margin} menos que su placa."},
	"sheet.trailer-weight.over":    {"It weighs {total}, {over} over its plate.", "Pesa {total}, {over} más que su placa."},

	"sheet.strainers.purpose":   {"Will anything that passes my screens plug the nozzle?", "¿Lo que pase por mis cedazos puede tapar la boquilla?"},
	"sheet.strainers.range":     {"1 to 10 screens; orifices 0.05 to 20 mm; ASTM E11 sieve numbers", "de 1 a 10 cedazos; orificios de 0,05 a 20 mm; números de tamiz ASTM E11"},
	"sheet.strainers.answer":    {"The chain is right: its last screen of {opening} is finer than the orifice of {orifice}.", "La cadena está bien: su último cedazo de {opening} es más fino que el orificio de {orifice}."},
	"sheet.strainers.fine":      {"Each screen is finer than the one before; the last is {opening}.", "Cada cedazo es más fino que el anterior; el último es de {opening}."},
	"sheet.strainers.not-finer": {"Screen {n} ({given}) is not finer than the one before it ({before}).", "El cedazo {n} ({given}) no es más fino que el anterior ({before})."},
	"sheet.strainers.passes":    {"The last screen ({given}, {opening}) lets through what plugs an orifice of {orifice}.", "El último cedazo ({given}, {opening}) deja pasar lo que tapa un orificio de {orifice}."},

	"sheet.sprayer.purpose":       {"What does my sprayer put on, or what must it do?", "¿Cuánto aplica mi equipo, o qué debe hacer?"},
	"sheet.sprayer.range":         {"0.1 to 60 km/h; 1 cm to 50 m for one nozzle; any three of rate, speed, width and flow", "de 0,1 a 60 km/h; de 1 cm a 50 m por boquilla; tres cualesquiera de dosis, velocidad, ancho y caudal"},
	"sheet.sprayer.answer":        {"The sprayer puts on {rate} of mix.", "El equipo aplica {rate} de mezcla."},
	"sheet.sprayer.flow":          {"Each nozzle gives {flow}.", "Cada boquilla da {flow}."},
	"sheet.sprayer.flow-pressure": {"Each nozzle must give {flow} for {rate} of mix, at {pressure}.", "Cada boquilla debe dar {flow} para {rate} de mezcla, a {pressure}."},
	"sheet.sprayer.speed":         {"Go at {speed} for {rate} of mix.", "Vaya a {speed} para {rate} de mezcla."},
	"sheet.sprayer.width":         {"One nozzle may treat {width} for {rate} of mix.", "Una boquilla puede tratar {width} para {rate} de mezcla."},
	"sheet.sprayer.pressure":      {"The flow takes {pressure}.", "Ese caudal necesita {pressure}."},
	"sheet.sprayer.course":        {"The course was covered at {speed}.", "El tramo se recorrió a {speed}."},

	"sheet.calibrate.purpose": {"Do the ways to calibrate say the same?", "¿Dicen lo mismo las formas de calibrar?"},
	"sheet.calibrate.range":   {"a catch over a plot; flow, timed course and width; a catch over the course of 1/128 acre", "recogida en una parcela; caudal, tramo cronometrado y ancho; recogida en el tramo de 1/128 de acre"},
	"sheet.calibrate.agree":   {"It puts on {rate} of mix; the ways are {percent} % apart, which measuring explains.", "Aplica {rate} de mezcla; las formas difieren en {percent} %, lo que explica la medición."},
	"sheet.calibrate.odd":     {"It puts on about {rate} of mix. One way is out: {way}. Repeat that one.", "Aplica cerca de {rate} de mezcla. Una forma se aparta: {way}. Repita esa."},
	"sheet.calibrate.apart":   {"The ways are {percent} % apart, over {most} %: measure again before you believe {rate} of mix.", "Las formas difieren en {percent} %, más de {most} %: mida otra vez antes de creer {rate} de mezcla."},
	"sheet.calibrate.one":     {"It puts on {rate} of mix, by one way.", "Aplica {rate} de mezcla, según una forma."},

	"sheet.course.purpose": {"How far do I walk so that fluid ounces read as gallons per acre?", "¿Cuánto camino para que las onzas líquidas se lean como galones por acre?"},
	"sheet.course.range":   {"nozzles 5 cm to 30 m apart", "boquillas separadas de 5 cm a 30 m"},
	"sheet.course.answer":  {"With nozzles {spacing} apart walk {distance}: fluid ounces from one nozzle then read as US gallons per acre; over {metric}, litres x 100 read as L/ha.", "Con boquillas cada {spacing} camine {distance}: las onzas líquidas de una boquilla se leen como galones de EE. UU. por acre; en {metric}, litros x 100 se leen como L/ha."},
	"sheet.course.plot":    {"On a plot of {plot} multiply the fluid ounces caught by {factor} for US gallons per acre.", "En una parcela de {plot} multiplique las onzas líquidas recogidas por {factor} para galones de EE. UU. por acre."},

	"sheet.nozzles.purpose": {"Are my nozzles even, and which are worn?", "¿Son parejas mis boquillas, y cuáles están gastadas?"},
	"sheet.nozzles.range":   {"1 to 200 nozzles, all tested at one pressure", "de 1 a 200 boquillas, todas probadas a una presión"},
	"sheet.nozzles.answer":  {"Replace: {replace}. Clean and recheck: {recheck}. The mean is {mean}, the spread {spread}.", "Cambiar: {replace}. Limpiar y volver a probar: {recheck}. La media es {mean}, la dispersión {spread}."},
	"sheet.nozzles.even":    {"Keep all: the mean is {mean}, the spread {spread}.", "Todas sirven: la media es {mean}, la dispersión {spread}."},
	"sheet.nozzles.uneven":  {"None is worn by its own measure, but they are not even: the mean is {mean}, the spread {spread}.", "Ninguna está gastada por sí misma, pero no son parejas: la media es {mean}, la dispersión {spread}."},

	"sheet.hose-end.purpose": {"What does my hose-end siphon really give?", "¿Qué da en verdad mi sifón de manguera?"},
	"sheet.hose-end.range":   {"less drawn from the jar than delivered; total chlorine 0 to 20 mg/L", "menos sacado del frasco que entregado; cloro total de 0 a 20 mg/L"},
	"sheet.hose-end.answer":  {"The hose end gives {mix}, {delivered} in the test.", "El sifón da {mix}, {delivered} en la prueba."},
	"sheet.hose-end.plain":   {"The hose end gave {delivered} in the test.", "El sifón dio {delivered} en la prueba."},

	"sheet.inject.purpose": {"How long does the injector take, and is the share what I want?", "¿Cuánto tarda el inyector, y es la parte que quiero?"},
	"sheet.inject.range":   {"injectors from 1:10000 to under 100 %; a laminar or turbulent line that runs full", "inyectores de 1:10000 a menos de 100 %; una línea que corre llena"},
	"sheet.inject.answer":  {"The tea is through in {time}; {mix} leave the line: {words}.", "El té pasa en {time}; salen {mix} de la línea: {words}."},
	"sheet.inject.stock":   {"Add {water} of water to the tea; the {stock} of stock are through in {time}; {mix} leave the line: {words}.", "Agregue {water} de agua al té; los {stock} de solución pasan en {time}; salen {mix} de la línea: {words}."},
	"sheet.inject.pump":    {"The tea is through in {time} at {rate}.", "El té pasa en {time} a {rate}."},

	"sheet.tree-row-volume.purpose": {"How much mix does a row of trees need to be wet all over?", "¿Cuánta mezcla necesita una hilera de árboles para mojarse por entero?"},
	"sheet.tree-row-volume.range":   {"rows 0.1 to 30 m wide, high and apart", "hileras de 0,1 a 30 m de ancho, de alto y de separación"},
	"sheet.tree-row-volume.answer":  {"The canopy takes {low} to {high} of mix.", "La copa toma de {low} a {high} de mezcla."},
	"sheet.tree-row-volume.one":     {"The canopy takes {rate} of mix.", "La copa toma {rate} de mezcla."},

	"sheet.reconcile.purpose": {"The first load is out. Am I on dose, and what now?", "Salió la primera carga. ¿Voy en la dosis, y ahora qué?"},
	"sheet.reconcile.range":   {"an area done that is not over the whole; a dead volume under what is gone", "una superficie hecha no mayor que el total; un volumen muerto menor que lo gastado"},
	"sheet.reconcile.on-dose": {"On dose: {actual} of tea against {planned}, {percent} off. {rest} of tea for the rest.", "En la dosis: {actual} de té contra {planned}, {percent} de diferencia. {rest} de té para el resto."},
	"sheet.reconcile.over":    {"Over the dose by {percent}: {actual} of tea against {planned}. {rest} of tea for the rest; correct one thing.", "Por encima de la dosis en {percent}: {actual} de té contra {planned}. {rest} de té para el resto; corrija una cosa."},
	"sheet.reconcile.under":   {"Under the dose by {percent}: {actual} of tea against {planned}. {rest} of tea for the rest; correct one thing.", "Por debajo de la dosis en {percent}: {actual} de té contra {planned}. {rest} de té para el resto; corrija una cosa."},

	"sheet.nutrients.purpose": {"What does this food or feed bring?", "¿Qué aporta este alimento o abono?"},
	"sheet.nutrients.range":   {"labels of 0 to 100 % in all; liquids of 0.5 to 3 kg/L", "etiquetas de 0 a 100 % en total; líquidos de 0,5 a 3 kg/L"},
	"sheet.nutrients.answer":  {"{amount} bring {n} of N, {p} of P2O5 and {k} of K2O.", "{amount} aportan {n} de N, {p} de P2O5 y {k} de K2O."},
	"sheet.nutrients.ground":  {"On the ground that is {n} of N, {share} of a low need.", "En el suelo son {n} de N, {share} de una necesidad baja."},
}
