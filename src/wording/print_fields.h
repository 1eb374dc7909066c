#pragma once

#include "wording/print.h"

#include <string>
#include <vector>

namespace thawslip::wording {

// The names of the fields, by which layouts place them, stand here alone.
namespace field_name {
inline constexpr const char* mark = "mark";
inline constexpr const char* month_strip = "month-strip";
inline constexpr const char* raw = "raw";
inline constexpr const char* dish = "dish";
inline constexpr const char* servings = "servings";
inline constexpr const char* bag = "bag";
inline constexpr const char* id = "id";
inline constexpr const char* place = "place";
inline constexpr const char* made = "made";
inline constexpr const char* use_by = "use-by";
inline constexpr const char* limit_phrase = "limit-phrase";
inline constexpr const char* limit_date = "limit-date";
inline constexpr const char* thaw = "thaw";
inline constexpr const char* other_thaws = "other-thaws";
inline constexpr const char* finish = "finish";
inline constexpr const char* sides = "sides";
inline constexpr const char* cook = "cook";
inline constexpr const char* contains = "contains";
inline constexpr const char* note = "note";
inline constexpr const char* kitchen = "kitchen";
inline constexpr const char* cautions = "cautions";
inline constexpr const char* local_rules = "local-rules";
inline constexpr const char* title = "title";
inline constexpr const char* page = "page";
inline constexpr const char* bags = "bags";
inline constexpr const char* timeline = "timeline";
inline constexpr const char* steps = "steps";
inline constexpr const char* frozen_safe = "frozen-safe";
inline constexpr const char* summary = "summary";
inline constexpr const char* rows = "rows";
inline constexpr const char* date = "date";
inline constexpr const char* dishes = "dishes";
inline constexpr const char* freezing = "freezing";
inline constexpr const char* shopping = "shopping";
inline constexpr const char* remarks = "remarks";
inline constexpr const char* lanes = "lanes";
inline constexpr const char* in_order = "in-order";
inline constexpr const char* dish_numbers = "dish-numbers";
inline constexpr const char* printed_on = "printed-on";
inline constexpr const char* allergens_note = "allergens-note";
inline constexpr const char* thaw_start = "thaw-start";
inline constexpr const char* until = "until";
inline constexpr const char* sequence = "sequence";
inline constexpr const char* finish_grouped = "finish-grouped";
inline constexpr const char* finish_count = "finish-count";
inline constexpr const char* contains_of_finish = "contains-of-finish";
inline constexpr const char* pen_notes = "pen-notes";
} // namespace field_name

/// Whether a print may be without a field that it has something to say in.
enum class Stays {
    Always, ///< who goes by the print could be harmed, or misled, without it
    IfRoom, ///< another print says it too, or nobody is the worse for it
};

struct FieldOfKind {
    std::string name;
    Stays stays = Stays::IfRoom;
    std::vector<std::string> said_by = {}; ///< others that together say all of it, in another form
};

/// All fields that prints of a kind have.
std::vector<FieldOfKind> fields_of(Kind kind);

} // namespace thawslip::wording
