package application

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Injection is tea that goes into a line, by a proportional injector of a
// share or by a pump that empties the tea in a time.
type Injection struct {
	Tea    quantity.Volume
	Share  *quantity.Share // of the injector, in what leaves the line
	Over   *quantity.Span  // of a dosing pump
	Flow   *quantity.Flow  // what leaves the line, tea included
	Wanted *quantity.Share // tea in what leaves the line; nil: the injector's share
}

// Injected is how an injection runs. What needs a flow is nil without one.
type Injected struct {
	Stock        Amounts // tea let down before it is injected
	Time         quantity.Span
	Rate         quantity.Flow // of stock
	Share        *quantity.Share
	Tea          *quantity.Share // in what leaves the line
	Mix, Carrier *quantity.Volume
}

// Run works an injection out. With f_i the injector's share and f the share
// wanted at the plant:
//
//	stock = tea x f_i / f;  mix = tea / f;  time = mix / flow;  carrier = mix - stock
//
// f over f_i cannot be reached and is refused with the most that can. A
// dosing pump's rate is tea / time, its share that rate / flow.
//
// Source: University of Massachusetts Extension (injectors are rated 1 in 100
// of what leaves the line); Washington State University FS035E (rate = volume
// / time).
func (i Injection) Run() (Injected, error) {
	if i.Over != nil {
		return i.byPump()
	}
	if i.Share == nil {
		return Injected{}, missing("injector")
	}
	if i.Flow == nil {
		return Injected{}, missing("flow")
	}
	if i.Share.Fraction() >= 1-slack {
		return Injected{}, fault.New("injector", "", wording.Say("application.injector-all"), wording.Say("application.injector-all.allowed"), wording.Text{})
	}
	wanted := *i.Share
	if i.Wanted != nil {
		wanted = *i.Wanted
	}
	if over(wanted.Fraction(), i.Share.Fraction()) {
		return Injected{}, fault.New("ratio", "", wording.Say("application.injector-weak", wording.Places{"wanted": wanted, "most": *i.Share}),
			wording.Say("application.injector-weak.allowed", wording.Places{"most": *i.Share, "words": MixWords(*i.Share)}), wording.Say("application.injector-weak.advice"))
	}
	return i.proportional(min(1, wanted / *i.Share), wanted), nil
}

func (i Injection) proportional(strength, wanted quantity.Share) Injected {
	stock := MixFromTea(i.Tea, strength)
	mix := i.Tea / quantity.Volume(wanted)
	carrier := mix - stock.Total
	time := quantity.Minutes(mix.Litres() / i.Flow.LitresPerMinute())
	return Injected{
		Stock: stock, Time: time, Rate: quantity.LitresPerMinute(stock.Total.Litres() / time.Minutes()),
		Share: i.Share, Tea: &wanted, Mix: &mix, Carrier: &carrier,
	}
}

func (i Injection) byPump() (Injected, error) {
	rate := quantity.LitresPerMinute(i.Tea.Litres() / i.Over.Minutes())
	run := Injected{Stock: MixOf(i.Tea, 1), Time: *i.Over, Rate: rate}
	if i.Flow == nil {
		return run, nil
	}
	if rate >= *i.Flow*(1-slack) {
		return Injected{}, fault.New("over", "", wording.Say("application.injection-over-flow", wording.Places{"rate": rate, "flow": *i.Flow}),
			wording.Say("application.injection-over-flow.allowed", wording.Places{"flow": *i.Flow}), wording.Say("application.injection-over-flow.advice"))
	}
	share := quantity.Share(rate / *i.Flow)
	mix := quantity.Litres(i.Flow.LitresPerMinute() * i.Over.Minutes())
	carrier := mix - i.Tea
	run.Share, run.Tea, run.Mix, run.Carrier = &share, &share, &mix, &carrier
	return run, nil
}
