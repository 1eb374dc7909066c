#include "desk/answers.h"
#include "desk/body.h"
#include "desk/day_text.h"
#include "desk/look.h"
#include "desk/millimetres.h"
#include "desk/route.h"
#include "desk/toml_json.h"
#include "desk/words.h"
#include "json/value.h"
#include "json/values.h"
#include "layout/legibility.h"
#include "render/svg.h"
#include "service/print/preview.h"
#include "service/print/printing.h"
#include "toml/document.h"

#include <array>
#include <charconv>

namespace thawslip::desk {
namespace {

/// The text that a page has of a day, as a file that a command would read.
service::DayTexts day_texts(const Session& session, const json::Json& body) {
    const auto number = number_at(body, "number");
    const auto name = number ? session.days.name_of(*number) : std::nullopt;
    service::DayTexts days;
    days.texts.push_back({name.value_or("day.toml"),
                          needed_text(body, "text"),
                          {},
                          name ? session.machine.days.place(*name) : std::string{}});
    return days;
}

/// The values of a text; null where no line is sure to be one.
json::Json form_of(const std::string& text) {
    Diagnostics faults; // said by the check
    const auto document = toml::parse(text, "", faults);
    return document.has_values() ? to_json(document.root()) : json::Json{};
}

std::string_view word_for(wording::Kind kind) {
    switch (kind) {
    case wording::Kind::BagLabel: return "label";
    case wording::Kind::FinishingCard: return "finishing card";
    case wording::Kind::CookDayCard: return "cook-day card";
    case wording::Kind::DoorList:
    case wording::Kind::DaySheet:
    case wording::Kind::PlanSheet: break;
    }
    return "list";
}

/// 2 of "package[2].size[1]"; null where a print is of no package.
json::Json number_of_package(const KeyPath& where) {
    const auto& path = where.text();
    const auto bracket = path.find('[');
    int number = 0;
    if (bracket != std::string::npos) {
        std::from_chars(path.data() + bracket + 1, path.data() + path.size(), number);
    }
    return number > 0 ? json::Json(number) : json::Json();
}

const char* key_of(layout::ReadAt at) {
    switch (at) {
    case layout::ReadAt::ArmsLength: return "arm";
    case layout::ReadAt::Hand: return "hand";
    case layout::ReadAt::Close: break;
    }
    return "close";
}

/// How large the type of each area is. \param words of places, by key_of
json::Json type_of(const std::vector<layout::AreaReport>& areas, const json::Json& words) {
    auto list = json::Json::array();
    for (const auto& area : areas) {
        if (!area.left_out && area.x_height > Length{}) {
            const auto at = layout::read_at(layout::fluent_centimetres(area.x_height));
            list.push_back({{"area", area.area},
                            {"x_height", in_millimetres(area.x_height)},
                            {"words", words.at(key_of(at))}});
        }
    }
    return list;
}

json::Json left_out_of(const std::vector<layout::AreaReport>& areas) {
    auto list = json::Json::array();
    for (const auto& area : areas) {
        if (area.left_out) {
            list.push_back(area.area);
        }
    }
    return list;
}

json::Json sample_json(service::Sample& sample, const typeset::FontSet& fonts, Drawings& drawings,
                       const json::Json& words) {
    const auto size = sample.frame.sheet;
    return {{"hash", drawings.keep(std::move(sample.frame), fonts, sample.name)},
            {"kind", word_for(sample.of.kind)},
            {"dish", sample.name},
            {"package", number_of_package(sample.where)},
            {"card", sample.card},
            {"copies", sample.copies},
            {"size", in_millimetres(size)},
            {"type", type_of(sample.areas, words)},
            {"left_out", left_out_of(sample.areas)}};
}

json::Json prints_json(service::Preview& preview, Drawings& drawings,
                       const service::Settings& settings) {
    const auto words = page_words(settings.language, settings.kitchen.allergens->name, "type");
    return json::list_of(preview.samples, [&](service::Sample& sample) {
        return sample_json(sample, preview.fonts, drawings, words);
    });
}

http::Response check_day(Session& session, const Asked& asked) {
    const auto body = body_of(asked.request);
    const auto settings = needed(session.machine.settings());
    const auto texts = day_texts(session, body);
    auto preview = service::preview(texts, what_at(body), look_at(body), settings,
                                    session.shelf.with(session.machine.surroundings(settings)));
    auto answer =
        json::check_json(preview ? &preview.value->days : nullptr, {}, style_of(settings));
    answer["messages"] = messages_for_page(preview.messages);
    answer["form"] = form_of(texts.texts.front().text);
    answer["prints"] =
        preview ? prints_json(*preview.value, session.drawings, settings) : json::Json::array();
    answer["why_nothing"] = preview ? preview.value->why_nothing : std::string{};
    return answer_with(answer);
}

http::Response drawn_print(Session& session, const Asked& asked) {
    auto svg = session.drawings.svg(asked.part);
    return svg ? http::Response{200, "image/svg+xml", *std::move(svg), {}}
               : refusal(404, "this print is not known any longer");
}

json::Json sheet_json(const service::Outcome<service::Printing>& printing, int sheet) {
    const auto& [days, job, laid_out, look, untold] = needed(printing);
    json::Json answer{{"sheets", laid_out.fitting.sheets},
                      {"prints", job.prints.empty() ? 0U : count_chosen(job, days)},
                      {"svg", {}},
                      {"messages", messages_for_page(printing.messages)}};
    if (sheet <= laid_out.fitting.sheets) {
        answer["svg"] =
            render::svg(draw_sheet(laid_out, sheet - 1), laid_out.setup.fonts, job.title);
    }
    return answer;
}

http::Response drawn_sheet(Session& session, const Asked& asked) {
    const auto body = body_of(asked.request);
    const auto settings = needed(session.machine.settings());
    const int sheet = number_at(body, "sheet").value_or(1);
    if (sheet < 1) {
        throw BadRequest{"\"sheet\" counts from 1"};
    }
    const auto printing =
        service::print(day_texts(session, body), what_at(body), look_at(body), settings,
                       session.shelf.with(session.machine.surroundings(settings)));
    return answer_with(sheet_json(printing, sheet));
}

} // namespace

std::span<const Route> check_routes() {
    using http::Method;
    static constexpr std::array routes = {
        Route{Method::Post, "/api/check", check_day},
        Route{Method::Get, "/api/print/*.svg", drawn_print},
        Route{Method::Post, "/api/sheet", drawn_sheet},
    };
    return routes;
}

} // namespace thawslip::desk
