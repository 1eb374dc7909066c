#include "layout/print_size.h"

namespace thawslip::layout {
namespace {

Part first_part(wording::Kind kind, const Stock& stock) {
    return print_size(kind, stock) == PrintSize::HalfCell ? Part::FirstHalf : Part::Whole;
}

} // namespace

PrintSize print_size(wording::Kind kind, const Stock& stock) {
    return stock.halves && kind == wording::Kind::FinishingCard ? PrintSize::HalfCell
                                                                : PrintSize::Cell;
}

Size room_of(wording::Kind kind, const Stock& stock) {
    return stock.safe_at(0, first_part(kind, stock)).size;
}

Size cell_of(wording::Kind kind, const Stock& stock) {
    return stock.part_at(0, first_part(kind, stock)).size;
}

} // namespace thawslip::layout
