#include "service/setup/settings_text.h"

#include "service/archive/toml_text.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::service {
namespace {

constexpr std::size_t value_width = 30; ///< behind it stands the remark

/// A key, and behind it what it is; as a remark where nothing is set.
std::string line(const std::string& key, const std::string& value, const char* remark,
                 bool is_set) {
    const auto text = fmt::format("{}{:<8} = {}", is_set ? "" : "# ", key, value);
    return fmt::format("{:<{}} # {}\n", text, value_width, remark);
}

std::string text_line(const char* key, const std::string& value, const char* example,
                      const char* remark) {
    return line(key, toml_string(value.empty() ? example : value), remark, !value.empty());
}

std::string languages_of(const Settings& settings) {
    return settings.second_language.empty()
               ? toml_string(settings.language)
               : fmt::format("[{}, {}]", toml_string(settings.language),
                             toml_string(settings.second_language));
}

/// A setting of the command line; as a remark where the lines before it come to the same.
std::string option_line(std::string_view key, const std::string& before, const Settings& settings,
                        const char* remark) {
    const auto options = setting_options();
    const auto option = std::ranges::find(options, key, &SettingOption::key);
    const auto read = settings_from(before, {});
    const auto value = option->text(settings);
    return line(option->key, toml_string(value), remark,
                !read || option->text(*read.value) != value);
}

/// What a job's table is for, and what its keys might say.
struct JobRemarks {
    const char* table;
    const char* about;
    const char* stock;
};

std::string table_of(const JobSettings& job, const JobRemarks& remarks) {
    auto text = fmt::format("\n[{}]  # {}\n", remarks.table, remarks.about);
    text += text_line("printer", job.printer, "kitchen",
                      "for --print without a name; else the computer's default");
    text += text_line("stock", job.stock, remarks.stock,
                      "a name of: thawslip stock list; or a file of your own");
    text += line("dpi", fmt::format("{}", job.dots_per_inch.value_or(usual_dots_per_inch)),
                 "dots per inch of that printer", job.dots_per_inch.has_value());
    text += line("copies", fmt::format("{}", job.copies.value_or(1)), "of each",
                 job.copies.has_value());
    return text;
}

} // namespace

std::string settings_text(const Settings& settings) {
    const bool is_a4 = settings.paper == "a4";
    const char* card = is_a4 ? "a4-cards-a6-cut" : "letter-cards-6x4in-cut";
    auto text = std::string{"# What holds for this kitchen and its printers. Written by: thawslip "
                            "setup\n# The manual names every key there is: man thawslip\n\n"};
    text += line("paper", toml_string(settings.paper), "letter or a4: which stocks are the default",
                 true);
    text += line("language", languages_of(settings),
                 "en, es or de; [\"en\", \"es\"] prints cards in both", true);
    text += option_line("units", text, settings, "metric, us, both or written: of what is printed");
    text += option_line("storage_list", text, settings,
                        "the storage times that are asked first: us, canada, oregon, uk…");
    text += table_of(settings.labels, {"labels", "thawslip labels DAY.toml --print",
                                       is_a4 ? "a4-2x7-99x38mm" : "letter-2x7-4x1.33in"});
    text += table_of(settings.finishing_cards,
                     {"finishing_cards", "taped to the bag with what is added on cook day", card});
    text += table_of(settings.cook_day_cards, {"cook_day_cards", "beside the stove", card});
    text += table_of(settings.lists, {"lists", "day sheets, door lists and dinner plans",
                                      is_a4 ? "a5-full" : "letter-full"});
    return text;
}

} // namespace thawslip::service
