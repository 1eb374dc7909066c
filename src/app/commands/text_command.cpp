#include "app/commands.h"
#include "app/commands/print_archive.h"
#include "app/files/data_folder.h"
#include "app/files/day_files.h"
#include "service/print/printing.h"

#include <ostream>

namespace thawslip::app {

ExitStatus text(const PrintOptions& options, const Settings& settings, Console console) {
    const auto texts = code_texts(read_texts(options.days), options.look, settings,
                                  surroundings(ids_to_look(settings, console)));
    console.err << to_text(texts.messages);
    if (!texts) {
        return ExitStatus::Refused;
    }
    const char* between = "";
    for (const auto& one : *texts.value) {
        console.out << between << one << "\n";
        between = "\n";
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app
