#include "typeset/total_fit.h"

#include <algorithm>
#include <optional>

namespace thawslip::typeset {
namespace {

/// How far a line may fall short before it looks ragged: badness 100, as TeX counts it. Our
/// choice.
constexpr double stretch_of_measure = 0.25;

/// A word narrower than this much of the measure dangles when it is the last line. Our choice.
constexpr double dangling_of_measure = 1.0 / 3.0;

/// The best way to set the boxes before one of them.
struct Node {
    LineCost cost;
    std::size_t line_begin = 0; ///< first box of the line that ends there
};

} // namespace

double LineBoxes::width(std::size_t first, std::size_t last) const {
    if (!exact.empty()) {
        const auto found =
            std::partition_point(exact.begin(), exact.end(), [first, last](const ExactWidth& e) {
                return e.first != first ? e.first < first : e.last < last;
            });
        if (found != exact.end() && found->first == first && found->last == last) {
            return found->width;
        }
    }
    return boxes[last].end - boxes[first].start;
}

LineCost cost_of(const LineBoxes& boxes, LineRange line, double measure) {
    const double width = boxes.width(line.first, line.last);
    if (line.last + 1 == boxes.boxes.size()) {
        const bool dangles =
            line.first == line.last && line.first > 0 && width < measure * dangling_of_measure;
        return {1, dangles ? 1 : 0, 0.0};
    }
    // Knuth and Plass: the ratio r of what the line lacks to its stretch, badness 100 r³,
    // demerits (1 + badness + penalty)². The last line may be short.
    const double ratio = std::max(0.0, measure - width) / (measure * stretch_of_measure);
    const double badness = 100.0 * ratio * ratio * ratio;
    const double sum = 1.0 + badness + boxes.boxes[line.last].penalty;
    return {1, 0, sum * sum};
}

std::vector<LineRange> total_fit(const LineBoxes& boxes, double measure) {
    const auto count = boxes.boxes.size();
    std::vector<Node> best(count + 1);
    for (std::size_t last = 0; last < count; ++last) {
        std::optional<Node> node;
        for (std::size_t first = last + 1; first-- > 0;) {
            if (first != last && !fits(boxes.width(first, last), measure)) {
                break; // with more boxes before it, the line only grows
            }
            const auto cost = best[first].cost + cost_of(boxes, {first, last}, measure);
            if (!node || cost < node->cost) {
                node = Node{cost, first};
            }
        }
        best[last + 1] = *node;
    }
    std::vector<LineRange> lines;
    for (auto end = count; end > 0; end = best[end].line_begin) {
        lines.push_back({best[end].line_begin, end - 1});
    }
    std::reverse(lines.begin(), lines.end());
    return lines;
}

int count_lines(const LineBoxes& boxes, double measure) {
    int lines = 0;
    std::size_t first = 0;
    for (std::size_t i = 0; i < boxes.boxes.size(); ++i) {
        if (i == 0 || !fits(boxes.width(first, i), measure)) {
            ++lines;
            first = i;
        }
    }
    return lines;
}

} // namespace thawslip::typeset
