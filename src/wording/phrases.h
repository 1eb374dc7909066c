#pragma once

#include "kitchen/plan.h"
#include "wording/language.h"
#include "wording/print.h"
#include "wording/style.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::wording {

/// Whether words are said in full, a little tighter, as where there is little room, or as where
/// there is next to none.
enum class Form { Full, Tight, Short, Least };

/// Whether it is eaten as it has thawed: made for that, and nothing says how it is cooked.
bool is_eaten_as_it_is(const kitchen::PlannedPackage& planned);

/// `17 Oct 2026`: day, month in letters, four-digit year, so that nobody misreads it. Meets the
/// order of Regulation (EU) 1169/2011 Annex X 1(c) and the content of 9 CFR 317.8 (b)(32).
std::string say_date(kitchen::Date date, const Language& language);

/// "17 Oct": below a heading that says month and year.
std::string say_date_in_month(kitchen::Date date, const Language& language);

/// "October 2026": what stands above the dates of a month.
std::string say_month(kitchen::Date date, const Language& language);

/// "45 min", "7 h", "1 h 30 min".
std::string say_duration(std::chrono::minutes duration, const Language& language);

/// How long something thaws, the same on all prints: in hours, half hours as a fraction, for
/// thawing in water is counted in them: `2½ h`, `72 h`.
std::string say_lead(std::chrono::minutes lead, const Language& language);

/// The same, from two days on also in these, for who counts back from a day: `64 h (2 days 16 h)`.
std::string say_lead_in_days(std::chrono::minutes lead, const Language& language);

std::string say_days(std::chrono::days days, const Language& language); ///< "1 day", "3 days"

/// "7–9 h", "90–120 min"; one duration where both ends are equal.
std::string say_time_range(const kitchen::TimeRange& range, const Language& language);

/// "at the start", "last 10 min": within a line.
std::string say_when(const kitchen::When& when, const Language& language);

/// "At the start", "Last 10 min": the head of a line, as short as can be.
std::string say_when_head(const kitchen::When& when, const Language& language);

/// The thaw method with how long it takes and its must-do, without a leading word: "in the
/// refrigerator on a tray: look from 24 h, allow 36 h; cook within 3 days of thawing". The days
/// count from the earlier figure, the soonest that it may be thawed. Where neither weight nor
/// thickness is known, the agencies' rule takes the place of the time.
/// Tighter, the same in fewer words; the short forms leave out how the bag lies.
std::string say_thaw(const kitchen::PlannedPackage& planned, const Language& language,
                     Form form = Form::Full);

/// How it may be thawed instead; and how long it cooks then, where that is another time.
/// \param way one of the other_thaws of `first`
std::string say_other_thaw(const kitchen::PlannedPackage& first, const kitchen::PlannedPackage& way,
                           const Language& language, Form form = Form::Full);

std::string say_placing(kitchen::Placing placing, const Language& language); ///< "on a rack"

/// "Lentil stew"; "Lentil stew (for 2)" where the dish is packed in several sizes.
std::string say_sized(const kitchen::Package& package, const Style& style);
/// The same as `say_dish` says it: "RAW · Mince patties (for 2)".
std::string say_sized_dish(const kitchen::Package& package, bool raw, const Style& style);

/// "300 g rice (pot, 15 min)".
std::string say_side(const kitchen::Side& side, const Style& style);

/// "slow cooker, low, 7–9 h": vessel, setting and time, as far as they are known.
std::string say_cooking(const kitchen::Cook& cook, const Language& language);

/// The same, with a setting that is a temperature in the style's units.
std::string say_cooking(const kitchen::Cook& cook, const Style& style);

/// The phrase that goes before the keep-until date: "Use by" or "Best if used by".
std::string say_keep_until_head(const kitchen::KeepUntil& keep_until, const Language& language);

/// "Use by 17 Nov 2026", unbroken.
std::string say_keep_until(const kitchen::KeepUntil& keep_until, const Language& language);

/// "RAW · Mince patties": the dish as lists name it.
std::string say_dish(std::string_view dish, bool raw, const Language& language);

/// "1–3, 5, 6": numbers of bags or dishes, in rising order.
std::string say_numbers(std::vector<int> numbers, const Language& language);

/// A temperature that agencies publish, in Fahrenheit: "70 °F (21 °C)", in the style's order, on
/// one line.
std::string say_cold_limit(double fahrenheit, const Style& style);

/// A paragraph of plain words, typeset.
Paragraph plain(std::string_view text);

/// A paragraph of words that typesetting has seen already, or must not touch: ids and dates.
Paragraph as_is(std::string text, Emphasis emphasis = Emphasis::Plain);

/// A further sentence behind the words of a paragraph, with a strong head: ". **May contain**
/// milk".
void add_sentence(Paragraph& paragraph, const std::string& head, const std::vector<Span>& words);

/// A paragraph with a label: "**Thaw** in the refrigerator".
Paragraph labelled(std::string_view label, std::string_view text);

/// The label of the thaw line: "Thaw", or "Do not thaw" for what is cooked from frozen.
std::string say_thaw_label(kitchen::ThawMethod method, const Language& language);

} // namespace thawslip::wording
