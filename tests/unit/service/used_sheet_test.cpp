// Where a half-used sheet is gone on with: the cell behind the last print on it.

#include "service/print/used_sheet.h"
#include "surroundings.h"

#include <doctest/doctest.h>

namespace used_sheet_test {

using namespace thawslip;
using archive::UsedSheet;
using service::Look;
using Cells = std::vector<int>;

namespace {

layout::Stock two_by_three() {
    layout::Stock stock;
    stock.name = "two-by-three";
    stock.columns = 2;
    stock.rows = 3;
    return stock;
}

layout::Stock roll() {
    layout::Stock stock;
    stock.name = "roll";
    return stock;
}

Look from(int first_cell, Cells skip = {}) {
    Look look;
    look.first_cell = first_cell;
    look.skip = std::move(skip);
    return look;
}

/// Which cells are printed on, and what is said of it.
struct Chosen {
    int first = 0;
    Cells skipped;
    std::string said;
};

Chosen chosen(const Look& look, const layout::Stock& stock, const std::optional<UsedSheet>& used) {
    service::Surroundings around;
    around.used_sheet = [&](const std::string& name) {
        return used && used->stock == name ? used : std::nullopt;
    };
    service::Messages messages;
    const auto imposition = service::imposition_of(look, stock, around, messages);
    return {imposition.first_cell, imposition.skipped_cells, to_text(messages)};
}

/// Where a print stops whose last cell is `last`, from 0, of sheet `sheet`.
std::optional<UsedSheet> stopped(const layout::Stock& stock, int sheet, int last,
                                 Cells skipped = {}) {
    service::LaidOut laid_out;
    laid_out.setup.medium.stock = stock;
    laid_out.setup.medium.imposition.skipped_cells = std::move(skipped);
    laid_out.fitting.places = {{0, 0}, {sheet, last}};
    return service::stopped_at(laid_out, "2026-10-17T14:05:00");
}

UsedSheet free_from(int next, Cells skipped = {}) {
    return {"two-by-three", next, std::move(skipped), "2026-10-17T14:05:00"};
}

} // namespace

TEST_CASE("the cells that are named are taken, whatever is remembered") {
    const auto four = chosen(from(4, {5}), two_by_three(), free_from(3));
    CHECK(four.first == 4);
    CHECK(four.skipped == Cells{5});
    CHECK(four.said == "");
    CHECK(chosen(from(1), two_by_three(), free_from(3)).first == 1);
}

TEST_CASE("the next cell is the one behind the last print, and what was spoiled stays so") {
    const auto next = chosen(from(service::next_cell, {6}), two_by_three(), free_from(3, {5, 6}));
    CHECK(next.first == 3);
    CHECK(next.skipped == Cells{6, 5});
    CHECK(next.said == "note: starting at cell 3 of two-by-three: the last print on it, on "
                       "2026-10-17, stopped before that\n");
    CHECK(chosen(from(service::next_cell), two_by_three(), free_from(2)).first == 2);
    CHECK(chosen(from(service::next_cell), two_by_three(), free_from(6)).first == 6);
}

TEST_CASE("a sheet that was used up is not gone on with") {
    const auto fresh = chosen(from(service::next_cell, {2}), two_by_three(), free_from(1));
    CHECK(fresh.first == 1);
    CHECK(fresh.skipped == Cells{2});
    CHECK(fresh.said == "note: the last print on two-by-three, on 2026-10-17, used its sheet up: "
                        "starting on a new one\n");
}

TEST_CASE("where no print on a stock is remembered, or of fewer cells, that is cautioned about") {
    for (const auto& used : {std::optional<UsedSheet>{}, std::optional{free_from(7)}}) {
        const auto unknown = chosen(from(service::next_cell, {4}), two_by_three(), used);
        CHECK(unknown.first == 1);
        CHECK(unknown.skipped == Cells{4});
        CHECK(unknown.said.starts_with("caution: no print on two-by-three is remembered"));
        CHECK(unknown.said.find("--first-cell 2") != std::string::npos);
    }
    service::Messages messages;
    CHECK(
        service::imposition_of(from(service::next_cell), two_by_three(), {}, messages).first_cell ==
        1); // nobody remembers
    CHECK(messages.all().size() == 1);
}

TEST_CASE("of a stock of one cell the next one is the first, and nothing is said") {
    const auto next = chosen(from(service::next_cell), roll(), std::nullopt);
    CHECK(next.first == 1);
    CHECK(next.said == "");
    CHECK(chosen(from(2), roll(), std::nullopt).first == 2); // there is none: said elsewhere
}

TEST_CASE("a print stops behind its last cell, and behind those that are spoiled there") {
    CHECK(stopped(two_by_three(), 0, 0) == free_from(2));
    CHECK(stopped(two_by_three(), 0, 3) == free_from(5));
    CHECK(stopped(two_by_three(), 0, 4) == free_from(6));
    CHECK(stopped(two_by_three(), 0, 5) == free_from(1)); // used up
    CHECK(stopped(two_by_three(), 0, 2, {4}) == free_from(5));
    CHECK(stopped(two_by_three(), 0, 1, {4, 3}) == free_from(5));
    CHECK(stopped(two_by_three(), 0, 3, {6, 5}) == free_from(1));
    CHECK(stopped(two_by_three(), 0, 1, {6, 1, 5}) == free_from(3, {5, 6}));
}

TEST_CASE("what is spoiled on the first sheet is whole on the next one") {
    CHECK(stopped(two_by_three(), 1, 1, {3, 5}) == free_from(3));
}

TEST_CASE("a stock of one cell, or a print of nothing, leaves no sheet to go on with") {
    CHECK_FALSE(stopped(roll(), 0, 0));
    service::LaidOut nothing;
    nothing.setup.medium.stock = two_by_three();
    CHECK_FALSE(service::stopped_at(nothing, "2026-10-17T14:05:00"));
}

} // namespace used_sheet_test
