#include "desk/answers.h"
#include "desk/asset.h"
#include "desk/millimetres.h"
#include "desk/route.h"
#include "desk/words.h"
#include "json/value.h"
#include "kitchen/allergens/allergen_list.h"
#include "service/food_facts.h"
#include "service/print/choices.h"
#include "service/print/job.h"
#include "wording/style.h"

#include <algorithm>
#include <array>
#include <set>

namespace thawslip::desk {
namespace {

json::Json allergens_json(const service::Settings& settings) {
    const auto style = service::style_of(settings);
    return json::list_of(style.allergens->classes, [&](const auto& listed) {
        return json::Json{{"id", kitchen::key(listed.allergen)},
                          {"name", wording::say_allergen({listed.allergen, {}}, style)}};
    });
}

/// What the page calls something in the set language; as the program calls it where that has no
/// name of its own.
std::string name_of(Named what, const std::string& called, const std::string& otherwise,
                    const service::Settings& settings) {
    const auto name =
        name_on_page(what, called, settings.language, settings.kitchen.allergens->name);
    return name.empty() ? otherwise : name;
}

/// The kinds of food that may be frozen; by their English names, which a day of any language may
/// have.
json::Json foods_json(const service::Settings& settings) {
    auto list = json::Json::array();
    for (const auto& facts : service::food_facts("", settings.storage_list, settings.language)) {
        if (facts.frozen) {
            list.push_back({{"id", facts.food},
                            {"name", name_of(Named::Food, facts.food, facts.food, settings)},
                            {"words", facts.words}});
        }
    }
    return list;
}

const json::Json& known_foods(Session& session, const service::Settings& settings) {
    const std::string list{settings.kitchen.allergens->name};
    auto& known = session.foods[{settings.storage_list, settings.language + list}];
    if (known.is_null()) {
        known = foods_json(settings);
    }
    return known;
}

/// A kind of print: what it is called, and the kinds of layout that it needs.
struct PrintKind {
    std::string_view word;
    service::What what;
    std::vector<wording::Kind> kinds;
};

const std::vector<PrintKind>& print_kinds() {
    static const std::vector<PrintKind> kinds = {
        {"labels", service::What::Labels, {wording::Kind::BagLabel}},
        {"finishing_cards", service::What::FinishingCards, {wording::Kind::FinishingCard}},
        {"cook_day_cards", service::What::CookDayCards, {wording::Kind::CookDayCard}},
        {"lists",
         service::What::Lists,
         {wording::Kind::DaySheet, wording::Kind::DoorList, wording::Kind::PlanSheet}},
    };
    return kinds;
}

/// What may be printed on a stock: what there is a layout for.
json::Json uses_of(const layout::Stock& stock, const std::vector<layout::Layout>& layouts) {
    auto uses = json::Json::array();
    for (const auto& kind : print_kinds()) {
        if (std::ranges::all_of(kind.kinds, [&](wording::Kind needed) {
                return service::layout_for(needed, stock, layouts) != nullptr;
            })) {
            uses.push_back(kind.word);
        }
    }
    return uses;
}

json::Json usual_for(const layout::Stock& stock, const service::Settings& settings) {
    auto uses = json::Json::array();
    for (const auto& kind : print_kinds()) {
        if (service::usual_stock(kind.what, settings) == stock.name) {
            uses.push_back(kind.word);
        }
    }
    return uses;
}

json::Json cells_of(const layout::Stock& stock) {
    auto cells = json::Json::array();
    for (int cell = 0; cell < stock.cells(); ++cell) {
        cells.push_back(in_millimetres(stock.cell_at(cell)));
    }
    return cells;
}

std::vector<layout::Layout> all_layouts(const service::Surroundings& around) {
    std::set<wording::Kind> kinds;
    for (const auto& kind : print_kinds()) {
        kinds.insert(kind.kinds.begin(), kind.kinds.end());
    }
    return service::shipped_layouts(around.layouts(kinds));
}

json::Json stocks_json(const service::Surroundings& around, const service::Settings& settings) {
    const auto layouts = all_layouts(around);
    return json::list_of(service::shipped_stocks(around), [&](const layout::Stock& stock) {
        return json::Json{{"name", stock.name},
                          {"title", name_of(Named::Stock, stock.name, stock.about, settings)},
                          {"sheet", in_millimetres(stock.sheet)},
                          {"roll", stock.roll},
                          {"cells", cells_of(stock)},
                          {"radius", in_millimetres(stock.corner_radius)},
                          {"for", uses_of(stock, layouts)},
                          {"usual_for", usual_for(stock, settings)}};
    });
}

json::Json day_json(const ListedDay& day, const Machine& machine) {
    const auto& [is_readable, is_day, made, dishes, bags] = day.summary;
    return {{"number", day.number},
            {"name", day.name},
            {"made", made ? json::Json(kitchen::to_iso(*made)) : json::Json{}},
            {"dishes", dishes},
            {"bags", bags},
            {"draft", machine.drafts.read(day.name).has_value()},
            {"readable", is_readable}};
}

json::Json days_json(Session& session) {
    return json::list_of(session.days.all(session.machine.days),
                         [&session](const auto& day) { return day_json(day, session.machine); });
}

http::Response state(Session& session, const Asked&) {
    const auto settings = session.machine.settings();
    if (!settings) { // the page has no words yet: said as the terminal says it, with the file
        return refusal(422, to_text(settings.messages));
    }
    const auto& kitchen = *settings.value;
    const auto around = session.shelf.with(session.machine.surroundings(kitchen));
    std::string why_no_printer;
    const auto printers = session.machine.printers(why_no_printer);
    return answer_with({{"language", kitchen.language},
                        {"words", page_words(kitchen.language, kitchen.kitchen.allergens->name)},
                        {"today", kitchen::to_iso(session.machine.now().today)},
                        {"folder", session.machine.days.shown},
                        {"set_up", !kitchen.file.empty()},
                        {"paper", kitchen.paper},
                        {"large_print", kitchen.large_print},
                        {"allergens", allergens_json(kitchen)},
                        {"foods", known_foods(session, kitchen)},
                        {"phones", session.machine.phones != nullptr},
                        {"printers", printers},
                        {"why_no_printer", why_no_printer},
                        {"stocks", stocks_json(around, kitchen)},
                        {"days", days_json(session)},
                        {"changes", session.machine.changes->now().id},
                        {"version", THAWSLIP_VERSION}});
}

http::Response days(Session& session, const Asked&) {
    return answer_with(
        {{"days", days_json(session)}, {"today", kitchen::to_iso(session.machine.now().today)}});
}

} // namespace

std::span<const Route> page_routes() {
    using http::Method;
    static constexpr std::array routes = {Route{Method::Get, "/api/state", state},
                                          Route{Method::Get, "/api/days", days}};
    return routes;
}

} // namespace thawslip::desk
