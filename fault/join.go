package fault

// Join gathers the faults of several checks into one List, so that all are
// reported at once; nil where nothing is wrong. The first error that is no
// fault comes back as it is.
func Join(errs ...error) error {
	var all List
	for _, err := range errs {
		if err == nil {
			continue
		}
		found := Of(err)
		if len(found) == 0 {
			return err
		}
		all = append(all, found...)
	}
	return all.OrNil()
}
