#pragma once

#include "kitchen/plan.h"
#include "wording/print.h"
#include "wording/style.h"

namespace thawslip::wording {

// The fields that several prints share, one function each. A field without paragraphs has
// nothing to say.

Field dish_field(const kitchen::PlannedPackage& planned);

/// The same on a label, where the words that tell it from a dish of the day with a similar name are
/// strong.
Field dish_field(const kitchen::PlannedPackage& planned, const kitchen::Plan& plan);

/// The dish's number of the day, by which its labels, cards and lines of lists belong together.
Field mark_field(const kitchen::PlannedPackage& planned);

/// Twelve letters, one a month, that of the limit critical, and the limit's year.
Field month_strip_field(const kitchen::PlannedPackage& planned, const Style& style);

/// "RAW", where what is in the bag is raw or a part of it.
Field raw_field(const kitchen::PlannedPackage& planned, const Style& style);
Field servings_field(const kitchen::PlannedPackage& planned, const Style& style);
Field bag_field(const kitchen::Bag& bag, const Style& style);
/// Where the bags lie; the first to go where there is no room.
Field place_field(const kitchen::PlannedPackage& planned);
Field id_field(const kitchen::Bag& bag);
Field made_field(const kitchen::PlannedPackage& planned, const Style& style);
Field keep_until_field(const kitchen::PlannedPackage& planned, const Style& style);

/// The limit as two fields, for layouts that set them apart: what the date means, and the date.
Field limit_phrase_field(const kitchen::PlannedPackage& planned, const Style& style);
Field limit_date_field(const kitchen::PlannedPackage& planned, const Style& style);
Field thaw_field(const kitchen::PlannedPackage& planned, const Style& style);

/// What may be done instead: a paragraph for each other way to thaw that the cook names.
Field other_thaws_field(const kitchen::PlannedPackage& planned, const Style& style);

/// The thaw line for a card, which has room for what to do where a bag is still hard inside.
Field thaw_field_with_advice(const kitchen::PlannedPackage& planned, const Style& style);
Field other_thaws_field_with_advice(const kitchen::PlannedPackage& planned, const Style& style);
Field contains_field(const kitchen::PlannedPackage& planned, const Style& style);
/// The same with what else comes in on cook day: who cooks for a guest has the card.
Field contains_field_with_added(const kitchen::PlannedPackage& planned, const Style& style);
Field note_field(const kitchen::PlannedPackage& planned, const Style& style);
Field kitchen_field(const std::string& kitchen, const Style& style);

/// The line that every print with food advice carries.
Field local_rules_field(const Style& style);

/// At which temperature food stays safe for as long as it is frozen.
std::string say_always_safe(const Style& style);

/// That food kept cold enough stays safe beyond its date, which is about quality.
Field frozen_safe_field(const Style& style);

/// Cautions of at least `least`, one paragraph each.
Field cautions_field(const kitchen::PlannedPackage& planned, kitchen::CautionLevel least,
                     const Style& style);

/// What the thaw line says anyway is not said twice on one print.
bool thaw_line_says(const kitchen::Caution& caution);

/// The words of one caution in this language; English where its table has none.
std::string say_caution(const kitchen::Caution& caution, const Language& language);

/// Whether an addition goes in at the same moment as the one before it.
bool goes_in_with_previous(const std::vector<kitchen::Finish>& finish, std::size_t i);

/// Whether it is said where an addition waits.
enum class Waits { Said, Unsaid };

/// "1 l (4¼ cups) vegetable stock (small bag taped to this one)": what is added and where it
/// waits.
std::string say_addition(const kitchen::Finish& finish, const Style& style,
                         Waits waits = Waits::Said);

} // namespace thawslip::wording
