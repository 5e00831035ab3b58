package api

import (
	"net/http"
	"reflect"
	"strings"

	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

// object is a JSON object of the description.
type object = map[string]any

// openAPI describes the API in OpenAPI 3.1, made from the same worksheets that
// answer.
func (a *API) openAPI(w http.ResponseWriter, r *http.Request) {
	a.write(w, http.StatusOK, describe())
}

func describe() object {
	paths := object{
		"/api/v1/calc":    object{"get": operation("The worksheets, in the order of the work.", nil, object{"type": "object"})},
		"/api/v1/batches": object{"get": operation("All batches, the newest first.", nil, object{"type": "object", "required": []string{"batches"}})},
		"/api/v1/entries": object{
			"get":  withParameter(operation("What was written down, by when it happened.", nil, object{"type": "object", "required": []string{"entries"}}), "since", "only what happened at or after this time (RFC 3339)"),
			"post": operation("Store one entry or an array of them. Acknowledged means on disk; the same entry sent twice is one entry.", entriesBody, resultsSchema),
		},
		"/api/v1/papers":                  object{"post": paperOperation()},
		"/api/v1/papers/{sha256}":         object{"get": withPath(operation("A kept paper, as it was sent.", nil, object{"type": "string"}), "sha256", "the hash of the paper")},
		"/api/v1/plan":                    object{"post": withParameter(planOperation(), "now", "the time of the plan (RFC 3339); default the clock's")},
		"/api/v1/batches/{name}/forecast": object{"get": forecastOperation()},
		"/healthz":                        object{"get": operation("The program runs.", nil, object{"type": "object"})},
		"/readyz":                         object{"get": operation("Entries can be read and stored.", nil, object{"type": "object"})},
	}
	for _, sheet := range catalog.All() {
		paths["/api/v1/calc/"+sheet.Name] = object{"post": sheetOperation(sheet)}
	}
	return object{
		"openapi":    "3.1.0",
		"info":       object{"title": "aerosteep", "version": "1", "description": "Plan, watch and record batches of aerated compost tea."},
		"paths":      paths,
		"components": object{"schemas": object{"Error": errorSchema, "Entry": entrySchema}},
	}
}

func operation(summary string, request, answer object) object {
	op := object{"summary": summary, "responses": object{
		"200":     object{"description": "done", "content": inJSON(answer)},
		"default": object{"description": "refused", "content": inJSON(object{"$ref": "#/components/schemas/Error"})},
	}}
	if request != nil {
		op["requestBody"] = object{"required": true, "content": inJSON(request)}
	}
	return op
}

// planOperation takes a job file in either of its forms.
func planOperation() object {
	op := operation("From every want of a job file to a plan that can be followed.", object{"type": "object"}, object{"type": "object"})
	content := op["requestBody"].(object)["content"].(object)
	content["application/toml"] = object{"schema": text}
	return op
}

func paperOperation() object {
	op := operation("Keep a paper of somebody else, whole; an entry names it by its hash.", object{"type": "string"}, paperSchema)
	op["requestBody"] = object{"required": true, "content": object{"application/octet-stream": object{"schema": object{}}}}
	return op
}

func withPath(op object, name, what string) object {
	op["parameters"] = []object{{"name": name, "in": "path", "required": true, "description": what, "schema": text}}
	return op
}

func forecastOperation() object {
	op := operation("What the oxygen of a batch will do, from every reading since its start.", nil, object{"type": "object"})
	op["parameters"] = []object{
		{"name": "name", "in": "path", "required": true, "description": "name of the batch", "schema": text},
		{"name": "now", "in": "query", "description": "the time of the forecast; default the clock's", "schema": text},
		{"name": "hours", "in": "query", "description": "hours to look ahead, 1 to 96", "schema": object{"type": "number"}},
		{"name": "members", "in": "query", "description": "members of the ensemble, 100 to 20000", "schema": object{"type": "integer"}},
		{"name": "seed", "in": "query", "description": "seed of the ensemble", "schema": object{"type": "integer"}},
		{"name": "what-if", "in": "query", "description": "a changed future: air +30 %, food -25 %", "schema": text},
	}
	return op
}

func withParameter(op object, name, what string) object {
	op["parameters"] = []object{{"name": name, "in": "query", "description": what, "schema": object{"type": "string"}}}
	return op
}

func inJSON(schema object) object { return object{"application/json": object{"schema": schema}} }

// sheetOperation describes a worksheet: each flag a key, as it would be typed.
func sheetOperation(sheet *worksheet.Sheet) object {
	properties, required := object{}, []string{}
	for i := range sheet.Inputs {
		in := &sheet.Inputs[i]
		if in.Kind == worksheet.OutFile {
			continue
		}
		properties[in.Flag] = inputSchema(in)
		if in.Required {
			required = append(required, in.Flag)
		}
	}
	request := object{"type": "object", "properties": properties, "required": required}
	op := operation(sheet.Purpose().String(), request, answerSchema(sheet))
	op["operationId"] = "calc-" + sheet.Name
	op["tags"] = []string{string(sheet.Group)}
	return op
}

func inputSchema(in *worksheet.Input) object {
	one := object{"type": []string{"string", "number"}, "description": in.Allowed().String()}
	switch {
	case in.Kind == worksheet.Switch:
		one["type"] = "boolean"
	case in.Kind == worksheet.Choice && !in.List:
		one = object{"type": "string", "enum": choices(in)}
	case in.Kind == worksheet.File:
		one = object{"type": "string", "description": "the text of the file"}
	}
	if in.Default != "" {
		one["default"] = in.Default
	}
	if in.Repeat {
		return object{"anyOf": []object{one, {"type": "array", "items": one}}}
	}
	return one
}

func choices(in *worksheet.Input) []string {
	if in.Unknown {
		return append([]string{"unknown"}, in.Choices...)
	}
	return in.Choices
}

// answerSchema describes an answer from the zero value of its data.
func answerSchema(sheet *worksheet.Sheet) object {
	schema := object{"type": "object"}
	if sheet.Shape != nil {
		schema = schemaOf(reflect.TypeOf(sheet.Shape), 0)
	}
	properties, isObject := schema["properties"].(object)
	if !isObject {
		properties = object{}
		schema["properties"] = properties
	}
	properties["sources"] = object{"type": "array", "items": object{"type": "object"}}
	properties["cautions"] = object{"type": "array", "items": object{"type": "string"}}
	return schema
}

// deepestSchema is how far a type is followed into itself.
const deepestSchema = 8

func schemaOf(t reflect.Type, depth int) object {
	if depth > deepestSchema {
		return object{}
	}
	switch t.Kind() {
	case reflect.Pointer:
		return object{"anyOf": []object{schemaOf(t.Elem(), depth+1), {"type": "null"}}}
	case reflect.Struct:
		return structSchema(t, depth)
	case reflect.Slice, reflect.Array:
		return object{"type": "array", "items": schemaOf(t.Elem(), depth+1)}
	case reflect.Map:
		return object{"type": "object", "additionalProperties": schemaOf(t.Elem(), depth+1)}
	case reflect.Bool:
		return object{"type": "boolean"}
	case reflect.String:
		return object{"type": "string"}
	case reflect.Float32, reflect.Float64:
		return object{"type": "number"}
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64, reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		return object{"type": "integer"}
	}
	return object{}
}

func structSchema(t reflect.Type, depth int) object {
	properties := object{}
	for i := range t.NumField() {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case f.Anonymous && name == "":
			inner := f.Type
			if inner.Kind() == reflect.Pointer {
				inner = inner.Elem()
			}
			if embedded, isObject := schemaOf(inner, depth+1)["properties"].(object); isObject {
				for key, schema := range embedded {
					properties[key] = schema
				}
			}
		case name != "" && name != "-" && f.IsExported():
			properties[name] = schemaOf(f.Type, depth+1)
		}
	}
	if len(properties) == 0 {
		return object{"type": []string{"object", "string"}} // a text in the reader's language
	}
	return object{"type": "object", "properties": properties}
}

var (
	text       = object{"type": "string"}
	textOrNull = object{"type": []string{"string", "null"}}

	errorSchema = object{"type": "object", "required": []string{"error"}, "properties": object{
		"error": object{"type": "object", "required": []string{"field", "given", "allowed", "advice"}, "properties": object{
			"field": text, "given": text, "allowed": text, "advice": text, "what": text, "nearest": textOrNull}},
		"problems": object{"type": "array", "items": object{"type": "object"}}}}

	entrySchema = object{"type": "object", "required": []string{"id", "kind", "at", "subject", "body"}, "properties": object{
		"id": object{"type": "string", "format": "uuid", "description": "UUIDv7 made where the entry was made"}, "kind": text,
		"at": object{"type": "string", "format": "date-time"}, "recorded_at": object{"type": "string", "format": "date-time"},
		"by": text, "device": text, "subject": text, "body": object{"type": []string{"object", "null"}}, "replaces": textOrNull}}

	entriesBody = object{"anyOf": []object{{"$ref": "#/components/schemas/Entry"}, {"type": "array", "items": object{"$ref": "#/components/schemas/Entry"}}}}

	resultsSchema = object{"type": "object", "required": []string{"results"}, "properties": object{"results": object{"type": "array", "items": object{
		"type": "object", "properties": object{"id": textOrNull, "result": object{"enum": []string{"stored", "already-stored", "refused"}}, "why": textOrNull}}}}}
)
