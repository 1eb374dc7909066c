#include "desk/look.h"

#include "desk/body.h"
#include "json/value.h"
#include "service/print/own_files.h"

#include <algorithm>
#include <array>

namespace thawslip::desk {
namespace {

struct Word {
    std::string_view word;
    service::What what;
};

constexpr std::array words = {
    Word{"labels", service::What::Labels},
    Word{"finishing_cards", service::What::FinishingCards},
    Word{"cook_day_cards", service::What::CookDayCards},
    Word{"cards", service::What::Cards},
    Word{"lists", service::What::Lists},
    Word{"day_sheets", service::What::DaySheets},
    Word{"shopping", service::What::Shopping},
    Word{"door_list", service::What::DoorList},
};

/// A name of what comes with the program.
std::string name_at(const json::Json& look, const char* key) {
    auto name = text_at(look, key).value_or("");
    if (service::is_file_name(name)) {
        throw BadRequest{std::string{"\""} + key + "\" is to be a name, and not a file"};
    }
    return name;
}

int first_cell_at(const json::Json& look) {
    const auto found = look.find("first_cell");
    if (found != look.end() && found->is_string()) {
        if (*found != "next") {
            throw BadRequest{"\"first_cell\" is to be a number or \"next\""};
        }
        return service::next_cell;
    }
    const int cell = number_at(look, "first_cell").value_or(1);
    if (cell < 1) { // next_cell is a number inside of the program alone
        throw BadRequest{"\"first_cell\" counts from 1"};
    }
    return cell;
}

std::vector<int> skip_at(const json::Json& look) {
    std::vector<int> cells;
    const auto found = look.find("skip");
    if (found == look.end() || found->is_null()) {
        return cells;
    }
    constexpr std::size_t most = 1000; // cells that a stock may have
    if (!found->is_array() || found->size() > most ||
        !std::ranges::all_of(*found, [](const json::Json& cell) {
            return cell.is_number_integer() && cell > 0 && cell <= most;
        })) {
        throw BadRequest{"\"skip\" is to be a list of cells, counted from 1"};
    }
    return found->get<std::vector<int>>();
}

std::optional<int> copies_at(const json::Json& look) {
    const auto copies = number_at(look, "copies");
    if (copies && (*copies < 1 || *copies > service::most_copies)) {
        throw BadRequest{"\"copies\" is to be from 1 to " + std::to_string(service::most_copies)};
    }
    return copies;
}

} // namespace

service::What what_at(const json::Json& object) {
    const auto word = needed_text(object, "what");
    const auto* found = std::ranges::find(words, word, &Word::word);
    if (found == words.end()) {
        throw BadRequest{"\"what\" is none of what is printed"};
    }
    return found->what;
}

service::Look look_at(const json::Json& object) {
    service::Look look;
    const auto found = object.find("look");
    if (found == object.end() || found->is_null()) {
        return look;
    }
    if (!found->is_object()) {
        throw BadRequest{"\"look\" is to be an object"};
    }
    look.stock = name_at(*found, "stock");
    look.layout = name_at(*found, "layout");
    look.first_cell = first_cell_at(*found);
    look.skip = skip_at(*found);
    if (found->contains("large_print") && !found->at("large_print").is_null()) {
        look.large_print = flag_at(*found, "large_print");
    }
    look.is_trial = flag_at(*found, "trial");
    look.part.dishes = text_at(*found, "dishes").value_or("");
    look.part.bags = text_at(*found, "bags").value_or("");
    look.part.from = text_at(*found, "from").value_or("");
    look.part.only_new = flag_at(*found, "only_new");
    look.part.copies = copies_at(*found);
    return look;
}

} // namespace thawslip::desk
