#include "archive/values.h"
#include "json/members.h"
#include "json/value.h"
#include "json/values.h"
#include "kitchen/figures.h"
#include "wording/fields.h"

#include <cmath>

namespace thawslip::json {
namespace {

std::string_view word_for(kitchen::CautionLevel level) {
    switch (level) {
    case kitchen::CautionLevel::Check: return "check";
    case kitchen::CautionLevel::Report: return "report";
    case kitchen::CautionLevel::Card: return "card";
    case kitchen::CautionLevel::LabelAndCard: return "label and card";
    case kitchen::CautionLevel::Refuse: break;
    }
    return "refuse";
}

Json cautions_json(const std::vector<kitchen::Caution>& cautions, const wording::Style& style) {
    return list_of(cautions, [&style](const kitchen::Caution& caution) {
        return Json{{"id", caution.id},
                    {"shown_on", word_for(caution.level)},
                    {"text", wording::say_caution(caution, style.language)}};
    });
}

void add_size(Json& json, const kitchen::Package& package) {
    if (package.weight) {
        json["grams"] = std::lrint(package.weight->grams);
    }
    if (package.thickness) {
        json["thickness_mm"] = package.thickness->in_millimetres();
    }
    if (package.container) {
        json["container"] = package.container->as_written;
    }
}

/// The other ways to thaw, with a time for each.
Json other_thaws_json(const kitchen::PlannedPackage& planned) {
    return list_of(planned.other_thaws, [](const kitchen::PlannedPackage& way) {
        Json one{{"thaw", archive::word_of(way.package.thaw.method)}};
        add_thaw(one, thaw_time(way), cook_within(way));
        return one;
    });
}

Json sides_json(const kitchen::Package& package) {
    return list_of(package.sides, [](const kitchen::Side& side) {
        Json one{{"add", kitchen::text_of(side.add)},
                 {"takes_minutes", {side.takes.low.count(), side.takes.high.count()}}};
        if (!side.in.empty()) {
            one["in"] = side.in;
        }
        return one;
    });
}

Json package_json(const kitchen::PlannedPackage& planned, const wording::Style& style) {
    Json json{{"dish", planned.package.dish},
              {"number", planned.number},
              {"servings", planned.package.servings},
              {"raw", planned.raw},
              {"made", kitchen::to_iso(planned.made)},
              {"keep_until", kitchen::to_iso(planned.keep_until.date)},
              {"basis", archive::word_of(planned.keep_until.basis)},
              {"bags", list_of(planned.bags, &kitchen::Bag::id)}};
    json["days_refrigerated"] = planned.package.days_refrigerated;
    json["in_freezer"] = planned.in_freezer;
    json["place"] = planned.package.place;
    json["contains"] = planned.package.contains;
    json["may_contain"] = planned.package.may_contain;
    add_size(json, planned.package);
    json["thaw"] = archive::word_of(planned.package.thaw.method);
    add_thaw(json, thaw_time(planned), cook_within(planned));
    json["other_thaws"] = other_thaws_json(planned);
    json["sides"] = sides_json(planned.package);
    json["cautions"] = cautions_json(planned.cautions, style);
    return json;
}

long whole_grams(kitchen::Mass mass) {
    return std::lrint(mass.grams);
}

/// Which bags go into the freezer on which day, and which have no place in it.
Json freezer_load_json(const kitchen::Plan& plan) {
    if (!plan.freezer_load) {
        return {};
    }
    const auto& load = *plan.freezer_load;
    Json batches = Json::array();
    for (std::size_t i = 0; i < load.batches.size(); ++i) {
        const auto day = kitchen::add_days(plan.made, std::chrono::days{i});
        batches.push_back({{"day", kitchen::to_iso(day)},
                           {"grams", whole_grams(load.batches[i].weight)},
                           {"bags", load.batches[i].bags}});
    }
    return {{"grams", whole_grams(load.total)},
            {"limit_low_grams", whole_grams(load.limit_low)},
            {"limit_grams", whole_grams(load.limit_high)},
            {"batches", batches},
            {"elsewhere_grams", whole_grams(load.elsewhere_weight)},
            {"elsewhere", load.elsewhere},
            {"too_heavy", load.too_heavy},
            {"without_weight", load.without_weight}};
}

Json messages_json(const service::Messages& messages) {
    return list_of(messages.all(), [](const service::Message& message) {
        const auto& what = message.what;
        Json one{{"severity", severity_word(what.severity)}};
        if (!what.where.file.empty()) {
            one["file"] = what.where.file;
        }
        if (what.where.line != 0) {
            one["line"] = what.where.line;
            one["column"] = what.where.column;
        }
        one["text"] = what.message;
        one["hints"] = what.hints;
        return one;
    });
}

std::string_view word_for(kitchen::Fill fill) {
    switch (fill) {
    case kitchen::Fill::Fits: return "fits";
    case kitchen::Fill::Tight: return "tight";
    case kitchen::Fill::Over: break;
    }
    return "over";
}

double tenths(double value) {
    return std::round(value * 10.0) / 10.0;
}

/// What the day's bags take up in the freezer, and what it holds beside them.
Json room_json(const kitchen::Plan& plan) {
    const auto& room = plan.room;
    Json json{{"bags", room.bags},
              {"litres", tenths(room.litres)},
              {"without_weight", room.unweighed},
              {"stack_mm", std::lrint(room.stack.in_millimetres())},
              {"without_thickness", room.unmeasured},
              {"largest_face_cm2", std::lrint(room.largest_face)}};
    if (plan.holds) {
        json["held"] = {{"bags", plan.holds->bags},
                        {"litres", tenths(plan.holds->litres)},
                        {"without_weight", plan.holds->unweighed}};
    }
    if (plan.freezer_litres) {
        json["freezer_litres"] = tenths(*plan.freezer_litres);
        json["verdict"] = word_for(kitchen::fill_of(*plan.freezer_litres, room.litres,
                                                    plan.holds ? plan.holds->litres : 0.0));
    }
    return json;
}

Json day_json(const kitchen::Plan& plan) {
    Json json{{"made", kitchen::to_iso(plan.made)}, {"room", room_json(plan)}};
    if (plan.prepared) {
        json["prepared"] = kitchen::to_iso(*plan.prepared);
    }
    return json;
}

void add_days(Json& answer, const service::Days& days, const wording::Style& style) {
    for (const auto& plan : days.plans) {
        for (const auto& planned : plan.packages) {
            answer["packages"].push_back(package_json(planned, style));
        }
        for (auto& caution : cautions_json(plan.cautions, style)) {
            answer["cautions"].push_back(std::move(caution));
        }
        answer["freezers"].push_back(freezer_load_json(plan));
        answer["days"].push_back(day_json(plan));
    }
}

} // namespace

Json check_json(const service::Days* days, const service::Messages& messages,
                const wording::Style& style) {
    Json answer{{"packages", Json::array()},
                {"cautions", Json::array()},
                {"freezers", Json::array()},
                {"days", Json::array()}};
    if (days != nullptr) {
        add_days(answer, *days, style);
    }
    answer["messages"] = messages_json(messages);
    return answer;
}

} // namespace thawslip::json
