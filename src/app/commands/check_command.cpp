#include "app/bag_text.h"
#include "app/commands.h"
#include "app/commands/check_text.h"
#include "app/commands/print_archive.h"
#include "app/files/data_folder.h"
#include "app/files/day_files.h"
#include "base/counted.h"
#include "base/list.h"
#include "json/answers.h"
#include "kitchen/foods/food_reading.h"
#include "kitchen/heat/thaw_ceiling.h"
#include "kitchen/sources.h"
#include "layout/legibility.h"
#include "service/day/freezer_load.h"
#include "service/day/in_freezer.h"
#include "service/print/check.h"
#include "wording/cooling.h"
#include "wording/fields.h"
#include "wording/phrases.h"

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <functional>
#include <map>
#include <ostream>

namespace thawslip::app {
namespace {

/// "food: "Hackfleisch" is taken as "raw ground meat"": what the cook's own words were read as.
void show_food(const kitchen::Package& package, std::ostream& out) {
    if (!package.food_as_written.empty() && package.food_as_written != package.food) {
        out << fmt::format("    food: {} is taken as {}\n", kitchen::said(package.food_as_written),
                           kitchen::said(package.food));
    } else if (package.food_basis == kitchen::FoodBasis::Words) {
        out << fmt::format("    food: not given; the words name {}\n", kitchen::said(package.food));
    }
}

/// "soup or stew keeps 2–3 months: Soups and stews, FoodSafety.gov…": where a date comes from.
void show_why(const kitchen::KeepUntil& keep, std::ostream& out) {
    if (!keep.row) {
        out << "    date: set by hand in use_by\n";
        return;
    }
    const auto& row = *keep.row;
    out << fmt::format("    date: {} keeps {} at best quality; the low end is printed\n"
                       "          list \"{}\", row \"{}\" ({}; {})\n",
                       row.food, span_text(row), row.rule_set, row.row, row.source, row.status);
}

std::string_view words_for(kitchen::LeadBasis basis) {
    switch (basis) {
    case kitchen::LeadBasis::HeatTransfer: return "heat transfer through its thickness";
    case kitchen::LeadBasis::HeatBalance: return "the heat it takes up, over the oven's power";
    case kitchen::LeadBasis::AgencyRule: return "the agencies' rule for its weight (USDA FSIS)";
    case kitchen::LeadBasis::CommonPractice: return kitchen::practice;
    }
    return {};
}

std::string_view words_for(kitchen::MissingSize missing) {
    switch (missing) {
    case kitchen::MissingSize::None: return {};
    case kitchen::MissingSize::Thickness: return "; thickness is not given";
    case kitchen::MissingSize::Weight: return "; weight is not given";
    case kitchen::MissingSize::Both: return "; neither weight nor thickness is given";
    }
    return {};
}

std::string_view words_for(kitchen::Placing placing) {
    switch (placing) {
    case kitchen::Placing::Rack: return "on a rack, air on both faces";
    case kitchen::Placing::Tray: return "on a tray, one face does most of the work";
    case kitchen::Placing::Stacked: return "in a stack, the middle one of three";
    }
    return {};
}

std::string_view words_for(kitchen::Wetness wetness) {
    switch (wetness) {
    case kitchen::Wetness::Dish: return "75 % water";
    case kitchen::Wetness::Soup: return "a soup's 88 % water";
    case kitchen::Wetness::Either: return "75 to 88 % water";
    }
    return {};
}

/// "thaw: 24 h, by the agencies' rule…": what decided how long it has to thaw.
void show_lead(const kitchen::PlannedPackage& planned, const Settings& settings,
               std::ostream& out) {
    const auto& language = service::message_style(settings).language;
    if (planned.package.thaw.method == kitchen::ThawMethod::FromFrozen) {
        const bool eaten = planned.served == kitchen::Served::Frozen;
        out << (eaten ? "    thaw: none, eaten frozen\n" : "    thaw: cooked from frozen\n");
        return;
    }
    if (!planned.thaw_lead) {
        out << "    thaw: food does not thaw at the temperature set for it; the agencies' rule is "
               "printed\n";
        return;
    }
    const auto& lead = *planned.thaw_lead;
    const auto said = [&](std::chrono::minutes time) { return say_duration(time, language); };
    out << fmt::format("    thaw: {}, by {}{}\n", said(lead.lead), words_for(lead.decided_by),
                       words_for(lead.missing));
    out << fmt::format(
        "          {}{}\n", words_for(lead.wetness),
        lead.method == kitchen::ThawMethod::Refrigerator
            ? fmt::format(", {}; looked at from {}", words_for(lead.placing), said(lead.soonest))
            : "");
    if (lead.by_heat && lead.by_agency) {
        out << fmt::format("          heat transfer with its margin {}, the agencies' rule {}: "
                           "the longer one counts\n",
                           said(*lead.by_heat), said(*lead.by_agency));
    }
    const auto thaw = settings_for(planned.package, planned.wetness, settings.kitchen.thaw);
    if (const auto face = warm_face(lead, kitchen::Served::Cooked, thaw)) {
        out << fmt::format("          its outside is warmer than 5 °C for {}{}; {} at most\n",
                           said(face->warm),
                           lead.method == kitchen::ThawMethod::ColdWater
                               ? fmt::format(", {} of handling counted", said(kitchen::handling))
                               : "",
                           said(face->limit));
    }
    if (const auto& left = planned.after_thawing) {
        out << fmt::format("          once thawed, {}: \"{}\" ({})\n",
                           days_text(left->low, left->high), left->row.row, left->row.source);
        if (const auto& fresh = left->capped_by) {
            out << fmt::format("          no longer than fresh, {}: \"{}\" ({})\n",
                               days_text(fresh->low, fresh->high), fresh->row, fresh->source);
        }
    }
}

void show(const kitchen::PlannedPackage& planned, Why why, const Settings& settings,
          std::ostream& out) {
    const auto& language = service::message_style(settings).language;
    out << fmt::format("{}: {}, made {}, {} {}\n   ",
                       say_sized(planned.package, service::message_style(settings)),
                       counted(planned.bags.size(), "bag"), say_date(planned.made, language),
                       say_keep_until_head(planned.keep_until, language),
                       say_date(planned.keep_until.date, language));
    for (const auto& bag : planned.bags) {
        out << " " << bag.id;
    }
    out << "\n";
    if (why != Why::Untold) {
        show_food(planned.package, out);
        show_why(planned.keep_until, out);
        show_minimum(planned, service::message_style(settings).units, out);
        show_lead(planned, settings, out);
        for (const auto& way : planned.other_thaws) {
            show_lead(way, settings, out);
        }
        if (planned.freezing) {
            out << fmt::format(
                "    freeze: {} lying so in the freezer, by heat transfer with its margin\n",
                say_duration(*planned.freezing, language));
        }
    }
    if (planned.cooling &&
        (why != Why::Untold || planned.cooling->way != kitchen::CoolingWay::AsPlaced)) {
        out << "    cool: " << say_cooling(*planned.cooling, service::message_style(settings))
            << "\n";
    }
    if (planned.in_freezer > 0) {
        out << fmt::format("    {} of this {} in the freezer already\n",
                           counted(planned.in_freezer, "bag"),
                           planned.in_freezer == 1 ? "is" : "are");
    }
    for (const auto& caution : planned.cautions) {
        out << "    caution: " << say_caution(caution, language) << "\n";
    }
}

/// The code, and the grade that a verifier could give it at best.
void show_code_numbers(const code::SizedSymbol& code, double paper_reflectance, std::ostream& out) {
    constexpr std::string_view levels = "LMQH";
    out << fmt::format(
        "    code: version {}, level {}, modules of {:.2f} mm ({} dots), {} characters",
        code.symbol.version, levels[static_cast<std::size_t>(code.symbol.level)],
        code.module.in_millimetres(), code.dots_per_module, code.text.size());
    if (const auto grade = service::best_grade(code, paper_reflectance)) {
        out << fmt::format("; grade {} at best (ISO/IEC 15415)", *grade);
    }
    out << "\n";
}

/// How much of a code may be damaged and it still reads (ISO/IEC 18004:2015, 7.5.1: about 7, 15, 25
/// and 30 % of the codewords).
void show_code(const code::SizedSymbol& code, std::ostream& out) {
    constexpr std::array percent{7, 15, 25, 30};
    out << fmt::format("    the code: squares of {:.1f} mm; it reads where {} % of it is damaged\n",
                       code.module.in_millimetres(),
                       percent[static_cast<std::size_t>(code.symbol.level)]);
}

/// The areas by how far away each is read with ease, the farthest first.
std::map<int, std::vector<std::string>, std::greater<>>
by_distance(const std::vector<layout::AreaReport>& areas) {
    std::map<int, std::vector<std::string>, std::greater<>> names; // by cm
    for (const auto& area : areas) {
        if (!area.left_out && area.x_height > Length{}) {
            names[layout::fluent_centimetres(area.x_height)].push_back(area.area);
        }
    }
    return names;
}

/// "at arm's length: dish, servings; in the hand: thaw, cook".
std::string reading_places(const std::vector<layout::AreaReport>& areas) {
    struct Place {
        layout::ReadAt at;
        std::string_view words;
    };
    constexpr std::array<Place, 3> places{{{layout::ReadAt::ArmsLength, "at arm's length"},
                                           {layout::ReadAt::Hand, "in the hand"},
                                           {layout::ReadAt::Close, "held close"}}};
    std::vector<std::string> parts;
    for (const auto& [at, words] : places) {
        std::vector<std::string> names;
        for (const auto& [cm, of_distance] : by_distance(areas)) {
            if (layout::read_at(cm) == at) {
                names.insert(names.end(), of_distance.begin(), of_distance.end());
            }
        }
        if (!names.empty()) {
            parts.push_back(fmt::format("{}: {}", words, fmt::join(names, ", ")));
        }
    }
    return joined(parts, "; ");
}

/// The same in metres: "0.74 m dish; 0.43 m thaw".
std::string reading_distances(const std::vector<layout::AreaReport>& areas) {
    return joined(by_distance(areas), "; ", [](const auto& of_distance) {
        const auto& [cm, names] = of_distance;
        return fmt::format("{:.2f} m {}", cm / 100.0, fmt::join(names, ", "));
    });
}

/// The areas of which something is true, after a heading; nothing where there are none.
void show_areas(std::string_view heading, const std::vector<layout::AreaReport>& areas,
                bool layout::AreaReport::*is_so, std::ostream& out) {
    std::vector<std::string> names;
    for (const auto& area : areas) {
        if (area.*is_so) {
            names.push_back(area.area);
        }
    }
    if (!names.empty()) {
        out << fmt::format("    {}: {}\n", heading, fmt::join(names, ", "));
    }
}

void show_sizes(const std::vector<layout::AreaReport>& areas, std::ostream& out) {
    out << "    x-heights:";
    for (const auto& area : areas) {
        if (!area.left_out && area.x_height > Length{}) {
            out << fmt::format(" {} {:.2f}", area.area, area.x_height.in_millimetres());
        }
    }
    out << " mm\n    read with ease from: " << reading_distances(areas) << "\n";
}

/// How the labels of one dish came out; all its bags are alike.
void show_fit(const layout::FittedPrint& fitted, const service::Setup& setup, Why why,
              double paper_reflectance, std::ostream& out) {
    const auto areas = report(fitted, setup.chosen.at(fitted.kind));
    out << "    reads with ease " << reading_places(areas) << "\n";
    show_areas("said shorter", areas, &layout::AreaReport::is_shortened, out);
    show_areas("left out", areas, &layout::AreaReport::left_out, out);
    if (fitted.symbol) {
        show_code(*fitted.symbol, out);
    }
    if (why == Why::WithNumbers) {
        show_sizes(areas, out);
        if (fitted.symbol) {
            show_code_numbers(*fitted.symbol, paper_reflectance, out);
        }
    }
}

void show(const service::Checked& checked, Why why, const Settings& settings, std::ostream& out) {
    const auto style = service::message_style(settings);
    std::size_t dish = 0;
    for (const auto& plan : checked.days.plans) {
        for (const auto& planned : plan.packages) {
            show(planned, why, settings, out);
            if (checked.labels && why != Why::Untold) {
                show_fit(checked.labels->fitting.prints[dish], checked.labels->setup, why,
                         settings.paper_reflectance, out);
            }
            ++dish;
        }
        for (const auto& caution : plan.cautions) {
            out << "the day: " << say_caution(caution, style.language) << "\n";
        }
        if (plan.freezer_load) {
            show_load(plan, style.units, out);
        }
        show_room(plan, style, out);
        for (const auto& trouble : service::room_troubles(plan, style)) {
            out << "    " << trouble << "\n";
        }
    }
    for (const auto& trouble : service::shared_freezer_troubles(checked.days.plans, style.units)) {
        out << "the freezer: " << trouble << "\n";
    }
}

} // namespace

ExitStatus check(const PrintOptions& options, Why why, AnswerAs answer, const Settings& settings,
                 Console console) {
    const auto checked = check(read_texts(options.days), options.look, settings,
                               surroundings(ids_to_look(settings, console)));
    console.err << to_text(checked.messages);
    if (answer == AnswerAs::Json) {
        console.out << json::check(checked ? &checked.value->days : nullptr, checked.messages,
                                   style_of(settings))
                    << "\n";
    } else if (checked) {
        show(*checked.value, why, settings, console.out);
    }
    return checked.messages.have_errors() ? ExitStatus::Refused : ExitStatus::Done;
}

} // namespace thawslip::app
