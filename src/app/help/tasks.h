#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::app {

/// Something that happens in a kitchen, and what is typed then.
struct Task {
    std::string_view when;     ///< "a label came off"
    std::string_view words;    ///< other words by which it is asked for
    std::string_view commands; ///< lines; what stands after "  # " is a remark
    std::string_view mind;     ///< what to mind; may be empty
};

/// All of them, in the order of a kitchen's year. The README shows the same; a test holds it to it.
std::span<const Task> all_tasks();

/// The tasks that have to do with `words`: those in which the most of them begin a word, in any
/// order and any case. None where no word does.
std::vector<Task> tasks_about(std::string_view words);

} // namespace thawslip::app
