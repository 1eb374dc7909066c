#include "desk/asset.h"

#include <array>

namespace thawslip {
extern const std::string_view desk_page_index_html;
extern const std::string_view desk_page_style_css;
extern const std::string_view desk_page_icon_svg;
extern const std::string_view desk_page_archive_js;
extern const std::string_view desk_page_bag_js;
extern const std::string_view desk_page_bag_list_js;
extern const std::string_view desk_page_book_js;
extern const std::string_view desk_page_camera_js;
extern const std::string_view desk_page_controls_js;
extern const std::string_view desk_page_core_js;
extern const std::string_view desk_page_day_js;
extern const std::string_view desk_page_days_js;
extern const std::string_view desk_page_deliver_js;
extern const std::string_view desk_page_desk_js;
extern const std::string_view desk_page_dinners_js;
extern const std::string_view desk_page_dish_facts_js;
extern const std::string_view desk_page_fields_js;
extern const std::string_view desk_page_form_js;
extern const std::string_view desk_page_freezer_js;
extern const std::string_view desk_page_history_js;
extern const std::string_view desk_page_key_js;
extern const std::string_view desk_page_months_js;
extern const std::string_view desk_page_notes_js;
extern const std::string_view desk_page_pair_js;
extern const std::string_view desk_page_parts_js;
extern const std::string_view desk_page_phones_js;
extern const std::string_view desk_page_plan_js;
extern const std::string_view desk_page_preview_js;
extern const std::string_view desk_page_print_js;
extern const std::string_view desk_page_print_choices_js;
extern const std::string_view desk_page_refused_js;
extern const std::string_view desk_page_reprint_js;
extern const std::string_view desk_page_said_js;
extern const std::string_view desk_page_saving_js;
extern const std::string_view desk_page_sheets_js;
extern const std::string_view desk_page_spool_js;
extern const std::string_view desk_page_stock_js;
extern const std::string_view desk_page_text_js;
extern const std::string_view desk_page_ui_js;
} // namespace thawslip

namespace thawslip::desk {
namespace {

constexpr std::string_view script = "text/javascript; charset=utf-8";

} // namespace

std::span<const Asset> assets() {
    // What is embedded is made before `main`, in no known order, so the table is made when asked
    // for.
    static const std::array all = {
        Asset{"/", "text/html; charset=utf-8", desk_page_index_html},
        Asset{"/style.css", "text/css; charset=utf-8", desk_page_style_css},
        Asset{"/icon.svg", "image/svg+xml", desk_page_icon_svg},
        Asset{"/archive.js", script, desk_page_archive_js},
        Asset{"/bag.js", script, desk_page_bag_js},
        Asset{"/bag_list.js", script, desk_page_bag_list_js},
        Asset{"/book.js", script, desk_page_book_js},
        Asset{"/camera.js", script, desk_page_camera_js},
        Asset{"/controls.js", script, desk_page_controls_js},
        Asset{"/core.js", script, desk_page_core_js},
        Asset{"/day.js", script, desk_page_day_js},
        Asset{"/days.js", script, desk_page_days_js},
        Asset{"/deliver.js", script, desk_page_deliver_js},
        Asset{"/desk.js", script, desk_page_desk_js},
        Asset{"/dinners.js", script, desk_page_dinners_js},
        Asset{"/dish_facts.js", script, desk_page_dish_facts_js},
        Asset{"/fields.js", script, desk_page_fields_js},
        Asset{"/form.js", script, desk_page_form_js},
        Asset{"/freezer.js", script, desk_page_freezer_js},
        Asset{"/history.js", script, desk_page_history_js},
        Asset{"/key.js", script, desk_page_key_js},
        Asset{"/months.js", script, desk_page_months_js},
        Asset{"/notes.js", script, desk_page_notes_js},
        Asset{"/pair.js", script, desk_page_pair_js},
        Asset{"/parts.js", script, desk_page_parts_js},
        Asset{"/phones.js", script, desk_page_phones_js},
        Asset{"/plan.js", script, desk_page_plan_js},
        Asset{"/preview.js", script, desk_page_preview_js},
        Asset{"/print.js", script, desk_page_print_js},
        Asset{"/print_choices.js", script, desk_page_print_choices_js},
        Asset{"/refused.js", script, desk_page_refused_js},
        Asset{"/reprint.js", script, desk_page_reprint_js},
        Asset{"/said.js", script, desk_page_said_js},
        Asset{"/saving.js", script, desk_page_saving_js},
        Asset{"/sheets.js", script, desk_page_sheets_js},
        Asset{"/spool.js", script, desk_page_spool_js},
        Asset{"/stock.js", script, desk_page_stock_js},
        Asset{"/text.js", script, desk_page_text_js},
        Asset{"/ui.js", script, desk_page_ui_js},
    };
    return all;
}

} // namespace thawslip::desk
