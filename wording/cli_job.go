package wording

// cliJobWords are what the terminal says about job files and plans.
var cliJobWords = Table{
	"cli.check-file":      {"List all problems of a job file at once", "Muestra a la vez todos los problemas de un archivo de trabajo"},
	"cli.schema":          {"Print the JSON Schema of the job file", "Muestra el JSON Schema del archivo de trabajo"},
	"cli.plan":            {"Plan every want of a job file: how much, in what, with what, when", "Planifica cada deseo de un archivo: cuánto, en qué, con qué, cuándo"},
	"cli.one-file":        {"this verb takes one file name", "este verbo lleva un nombre de archivo"},
	"cli.one-file.advice": {"write aerosteep {use}", "escriba aerosteep {use}"},
}
