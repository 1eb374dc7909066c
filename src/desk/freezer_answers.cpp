#include "desk/freezer_answers.h"

#include "desk/body.h"
#include "json/value.h"
#include "json/values.h"
#include "service/freezer/bags.h"
#include "service/freezer/freezer_list.h"

#include <cmath>
#include <fmt/format.h>

namespace thawslip::desk {
namespace {

/// \param key what the total is of: `"dish": "Barley stew"`
json::Json total_json(const char* key, const std::string& of, const service::BagTotal& total) {
    return {{key, of},
            {"bags", total.bags},
            {"servings", total.servings},
            {"grams", std::lround(total.grams)},
            {"all_weighed", total.all_weighed}};
}

/// `2027-02` (ISO 8601)
std::string month_text(std::chrono::year_month month) {
    return fmt::format("{:04}-{:02}", int{month.year()}, unsigned{month.month()});
}

std::chrono::minutes time_of_day(const std::string& text) {
    const auto time = kitchen::parse_time_of_day(text);
    if (!time) {
        throw BadRequest{"\"at\" is to be a time of day such as 18:30"};
    }
    return *time;
}

int within(int number, int most, const char* key) {
    if (number < 1 || number > most) {
        throw BadRequest{fmt::format("\"{}\" is to be a number from 1 to {}", key, most)};
    }
    return number;
}

} // namespace

json::Json freezer_answer(const service::FreezerList& list, kitchen::Date today,
                          const wording::Style& style) {
    json::Json answer{{"bags", json::freezer_json(list.bags, today, style)},
                      {"totals", json::Json::array()},
                      {"past", list.past},
                      {"months", json::Json::array()}};
    for (const auto& [dish, total] : list.totals) {
        answer["totals"].push_back(total_json("dish", dish, total));
    }
    for (const auto& [month, total] : service::totals_by_month(list.bags)) {
        answer["months"].push_back(total_json("month", month_text(month), total));
    }
    return answer;
}

json::Json places_answer(std::span<const archive::Bag> bags) {
    return json::list_of(service::totals_by_place(bags), [](const auto& total) {
        return total_json("place", total.first, total.second);
    });
}

service::NextQuestion next_question(const json::Json& body) {
    constexpr int most_days = 366; // as the command takes them
    constexpr int most_people = 999;
    service::NextQuestion question;
    question.count = within(number_at(body, "days").value_or(question.count), most_days, "days");
    if (const auto at = text_at(body, "at")) {
        question.at = time_of_day(*at);
    }
    if (const auto serves = number_at(body, "serves")) {
        question.serves = within(*serves, most_people, "serves");
    }
    question.past_too = flag_at(body, "past");
    return question;
}

namespace {

json::Json meal_after_date(const service::MealAfterDate& meal) {
    return {{"eat", kitchen::to_iso(meal.eat)},
            {"bags", json::list_of(meal.bags, [](const archive::Bag& bag) {
                 return json::Json{{"dish", bag.dish},
                                   {"raw", service::is_raw(bag)},
                                   {"keep_until", kitchen::to_iso(bag.keep_until)},
                                   {"basis", archive::word_of(bag.basis)}};
             })}};
}

} // namespace

json::Json menu_answer(const service::Menu& menu) {
    const auto iso = [](kitchen::LocalMinute eat) { return kitchen::to_iso(eat); };
    return {{"proposals", json::next_json(menu.proposals)},
            {"nothing_thawed_by", json::list_of(menu.without, iso)},
            {"after_date", json::list_of(menu.after_date, meal_after_date)},
            {"past", menu.past},
            {"too_many", menu.too_many},
            {"serves", menu.serves},
            {"small", menu.small},
            {"too_few", menu.too_few},
            {"avoided", menu.avoided},
            {"days_left", menu.days_left}};
}

} // namespace thawslip::desk
