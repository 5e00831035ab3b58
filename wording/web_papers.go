package wording

// webPapersWords are the sentences of papers and safekeeping on the pages.
var webPapersWords = Table{
	"web.papers.title": {"To print", "Para imprimir"}, "web.papers.facts": {"What is known", "Lo que se sabe"},
	"web.papers.pdf": {"Print (PDF)", "Imprimir (PDF)"}, "web.papers.data": {"Data (JSON)", "Datos (JSON)"},
	"web.papers.brew": {"Brew record {name}", "Registro de la tanda {name}"}, "web.papers.label": {"Container label {name}", "Etiqueta del envase {name}"},
	"web.papers.application": {"Application on {name}", "Aplicación en {name}"}, "web.papers.visit": {"Visit record {name}", "Registro de la visita {name}"},
	"web.papers.cleaning": {"Cleaning log {name}", "Registro de limpieza {name}"}, "web.papers.incident": {"Incident {name}", "Incidente {name}"},
	"web.papers.trace": {"Trace lot {name}", "Rastrear el lote {name}"}, "web.papers.recall": {"Recall notice for lot {name}", "Aviso de retirada del lote {name}"},
	"web.papers.stock":  {"What lies in the shed", "Lo que hay en la bodega"},
	"web.papers.crew":   {"Initials, names, training", "Iniciales, nombres, formación"},
	"web.papers.notice": {"Notice for gate or door: {name}", "Aviso para portón o puerta: {name}"},
	"web.papers.both":   {"English and Spanish", "Inglés y español"},
	"web.papers.folder": {"Inspection folder: {name}", "Carpeta de inspección: {name}"},
	"web.papers.season": {"Looking back on {name}", "Balance de {name}"},

	"web.records.search": {"Search the logbook", "Buscar en el libro"}, "web.records.search.hint": {"Words, a batch, a bed, initials. All of them must be in the line.", "Palabras, una tanda, un bancal, iniciales. Todas deben estar en la línea."},
	"web.records.search.act": {"Search", "Buscar"}, "web.records.search.none": {"No line has “{q}”.", "Ninguna línea tiene «{q}»."},

	"web.safe.title": {"Keeping it safe", "Ponerlo a salvo"}, "web.safe.never": {"No backup was ever made.", "Nunca se hizo una copia."},
	"web.safe.today": {"Last backup: {clock}.", "Última copia: {clock}."}, "web.safe.days": {"The last backup is {n} {n|day|days} old.", "La última copia tiene {n} {n|día|días}."},
	"web.safe.advice": {"Keep a copy on another machine: a phone falls into the tank sooner or later.", "Guarde una copia en otra máquina: tarde o temprano un teléfono cae al tanque."},
	"web.safe.backup": {"Make a backup", "Hacer una copia"}, "web.safe.export": {"Export the entries", "Exportar las entradas"},
	"web.safe.restore": {"Restore a backup, or load a job file", "Restaurar una copia, o cargar un archivo de trabajo"}, "web.safe.take": {"Take in a file", "Tomar un archivo"},
	"web.safe.take.hint": {"An export, a job file, or (while nothing is set up) a backup; up to 8 MB.", "Una exportación, un archivo de trabajo o (mientras no haya nada configurado) una copia; hasta 8 MB."},
	"web.safe.take.act":  {"Take it in", "Tomarlo"}, "web.safe.no-file": {"No file was chosen.", "No se eligió ningún archivo."}, "web.safe.too-long": {"The file is longer than 8 MB. Use aerosteep import or restore.", "El archivo pasa de 8 MB. Use aerosteep import o restore."},
	"web.safe.loaded": {"{n} {n|table|tables} taken over from the job file.", "{n} {n|tabla tomada|tablas tomadas} del archivo de trabajo."}, "web.safe.restored": {"The backup is restored.", "La copia está restaurada."},
	"web.safe.imported": {"{stored} stored, {already} known already, {refused} refused.", "{stored} guardadas, {already} ya conocidas, {refused} rechazadas."},

	"web.plan.sheets": {"Job sheets (PDF)", "Hojas de trabajo (PDF)"}, "web.plan.calendar": {"Calendar of the steps", "Calendario de los pasos"},
}
