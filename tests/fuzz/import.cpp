// An exported folder as somebody may have changed it. A line "==== name" begins each of its files.

#include "fuzz/archives.h"
#include "service/archive/archive_folder.h"

#include <map>
#include <string>

using namespace thawslip;

namespace {

using Files = std::map<std::string, std::string>;

Files files_of(std::string_view text) {
    constexpr std::string_view mark = "==== ";
    Files files;
    while (text.starts_with(mark)) {
        const auto line_end = std::min(text.find('\n'), text.size() - 1);
        const auto name = text.substr(mark.size(), line_end - mark.size());
        text.remove_prefix(line_end + 1);
        const auto next = text.find("\n==== ");
        const auto end = next == std::string_view::npos ? text.size() : next + 1;
        files[std::string{name}] = text.substr(0, end);
        text.remove_prefix(end);
    }
    return files;
}

/// A folder asks for files below itself alone, whatever its own lists say.
void hold_inside(const std::string& name) {
    fuzz::hold(!name.starts_with('/') && name.find("..") == std::string::npos,
               "a folder is read, and nothing outside of it");
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const fuzz::Memory memory;
    const auto files = files_of(fuzz::text_of(data, size));
    const auto read = [&files](const std::string& name) -> Result<std::string, Diagnostic> {
        hold_inside(name);
        const auto found = files.find(name);
        if (found == files.end()) {
            return Failure{Diagnostic{Severity::Error, {}, {}, name + " is not there", {}}};
        }
        return found->second;
    };
    const auto contents = service::read_archive_files("folder", read);
    if (contents) {
        fuzz::hold_merged(memory, *contents.value);
    } else {
        fuzz::hold(contents.messages.have_errors(), "a refusal says why");
    }
    return 0;
}
