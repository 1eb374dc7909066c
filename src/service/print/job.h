#pragma once

#include "layout/compose.h"
#include "service/days.h"
#include "wording/door_list.h"
#include "wording/print.h"

#include <cstdint>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::service {

/// What a cook wants printed of days.
enum class What {
    Labels, ///< one for every bag
    Cards,  ///< for each dish its cook-day card, then the finishing cards of its bags
    FinishingCards,
    CookDayCards,
    Lists,         ///< day sheets, shopping lists and the door list
    DaySheets,     ///< with the shopping list of all days where anything is to be bought
    StationSheets, ///< the same, with pages of its own for each station
    Shopping,      ///< the shopping list alone
    DoorList,
    PlanSheet, ///< a dinner's plan, from service/dinner
};

/// What the archive calls it: "labels", "finishing cards"; empty for lists, which it does not keep.
std::string_view kept_as(What what);
/// The other way round; what is not known are cards of both kinds.
What what_kept_as(std::string_view name);

/// One label or card to be made: what it is of, by places in `Days`. Its words are made from
/// there when they are needed.
struct PrintOf {
    wording::Kind kind = wording::Kind::BagLabel;
    std::uint32_t day = 0;
    std::uint32_t package = 0; ///< of that day; for a list or plan: which of the job's lists
    std::uint32_t bag = 0;     ///< of that package; for a print of the whole dish its first one
};

/// Which bags are printed, and how often.
struct Chosen {
    std::optional<std::set<std::string>> bags = {}; ///< ids; nothing: all
    int copies = 1;                                 ///< of each print
    std::set<std::string> gone = {}; ///< ids of those that lie in no freezer any longer
};

/// Prints to be made in one file.
struct Job {
    What what = What::Labels;
    std::vector<PrintOf> prints;       ///< of all bags: a part is sized as it is among all
    Chosen chosen;                     ///< which of them are printed
    std::vector<wording::Print> lists; ///< what lists and plan sheets say: they are few
    std::string title;                 ///< of the document
    std::string noun;                  ///< what is counted: "label", "card"
    std::string default_stock;         ///< where no stock is named
    std::string roomy_stock;           ///< the same for large print or two languages
    layout::Which which = layout::Which::Every;
    std::string language = "en"; ///< of its words: ISO 639-1
};

/// The prints of days, in the order written. Lists are those of the chosen bags: a day sheet of
/// their dishes, a door list of themselves.
Job job_of(What what, const Days& days, const Settings& settings, const Chosen& chosen = {});

/// What the settings say of such prints. Cards of both kinds go by those of cook-day cards.
const JobSettings& settings_of(What what, const Settings& settings);

/// Whether the two kinds of cards are printed apart by the settings: by another printer, on another
/// stock, with other dots or in another number.
bool are_cards_apart(const Settings& settings);

/// The stock of such prints where none is named.
std::string usual_stock(What what, const Settings& settings);

/// The door list of these bags, wherever they are known from.
Job door_list_job(std::span<const wording::DoorRow> rows, const Settings& settings, int copies = 1);

/// Whether a print is made of what was chosen: of its bag, or of any of the dish where it serves
/// the whole dish.
bool is_chosen(const PrintOf& of, const Job& job, const Days& days);
/// How many prints are made, with their copies.
std::size_t count_chosen(const Job& job, const Days& days);

/// The sheets of a dinner's plan.
Job plan_sheet_job(std::vector<wording::Print> sheets, const Settings& settings);

/// What a print is of. \pre it is no list
const kitchen::PlannedPackage& package_of(const PrintOf& of, const Days& days);

/// What a print is called in messages: its dish, or the list.
const std::string& dish_name_of(const PrintOf& of, const Job& job, const Days& days);

/// The words and the code of each print of a job. Refers to all three: they must outlive it.
layout::Source source_of(const Job& job, const Days& days, const Settings& settings);

} // namespace thawslip::service
