package wording

// cliRecordWords are the sentences of the verbs that keep and carry records.
var cliRecordWords = Table{
	"cli.no-data-folder":        {"no place for the records is known on this machine", "no se conoce un lugar para los registros en esta máquina"},
	"cli.no-data-folder.advice": {"name a folder with --data, or in AEROSTEEP_DATA", "nombre una carpeta con --data, o en AEROSTEEP_DATA"},

	"cli.export":                     {"Write every entry of the journal, one JSON object a line.", "Escribe todas las entradas del diario, un objeto JSON por línea."},
	"cli.import":                     {"Store the entries of an export; what is there already stays as it is.", "Guarda las entradas de una exportación; lo que ya está queda como está."},
	"cli.import.stored":              {"line {line}: stored", "línea {line}: guardada"},
	"cli.import.already-stored":      {"line {line}: already stored", "línea {line}: ya estaba guardada"},
	"cli.import.refused":             {"line {line}: refused: {why}", "línea {line}: rechazada: {why}"},
	"cli.import.sum":                 {"{stored} stored, {already} already there, {refused} refused.", "{stored} guardadas, {already} ya estaban, {refused} rechazadas."},
	"cli.import.some-refused":        {"{refused} of {of} {of|line was|lines were} refused", "se {refused|rechazó|rechazaron} {refused} de {of} {of|línea|líneas}"},
	"cli.import.some-refused.advice": {"the good lines are stored; mend the others and import the file again", "las líneas buenas están guardadas; corrija las otras e importe el archivo otra vez"},
	"cli.backup":                     {"Copy the journal to a file, whole even while a server runs.", "Copia el diario a un archivo, entero aunque corra un servidor."},
	"cli.backup.done":                {"{entries} {entries|entry is|entries are} backed up in {file}. Keep a copy on another disk.", "{entries} {entries|entrada está copiada|entradas están copiadas} en {file}. Guarde una copia en otro disco."},
	"cli.restore":                    {"Bring a backup back.", "Recupera una copia."},
	"cli.restore.done":               {"{entries} {entries|entry is|entries are} back from {file}.", "{entries} {entries|entrada volvió|entradas volvieron} de {file}."},
	"cli.restore.kept":               {"{entries} {entries|entry is|entries are} back from {file}. What was there before is kept in {kept}.", "{entries} {entries|entrada volvió|entradas volvieron} de {file}. Lo que había antes está en {kept}."},
	"cli.verify":                     {"Read everything again and check the chain of entries.", "Lee todo de nuevo y revisa la cadena de entradas."},
	"cli.verify.empty":               {"The journal is empty, and nothing is wrong.", "El diario está vacío y no hay errores."},
	"cli.verify.ok":                  {"All {entries} {entries|entry is|entries are} as they were stored.", "{entries|La única entrada está como se guardó|Todas las entradas están como se guardaron} ({entries})."},
	"cli.verify.wrong":               {"{problems} {problems|thing is|things are} wrong in {entries} {entries|entry|entries}:", "Hay {problems} {problems|error|errores} en {entries} {entries|entrada|entradas}:"},
	"cli.verify.partly":              {"Journal {journal} was imported in part: its first entries lie elsewhere.", "El diario {journal} se importó en parte: sus primeras entradas están en otro lugar."},
	"cli.verify.advice":              {"copy the data folder to a safe place as it is, then compare with the last backup", "copie la carpeta de datos tal como está a un lugar seguro, y compárela con la última copia"},
}
