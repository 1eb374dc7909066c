#include "app/command_line/parts.h"

#include <CLI/CLI.hpp>
#include <array>

namespace thawslip::app {
namespace {

/// What stands below a command's options. A line that begins with "thawslip " is an example, up to
/// any "  # …"; a test puts each through the parser, and wants one for every command.
struct Notes {
    std::string_view command;
    const char* lines;
};

constexpr std::array notes{
    Notes{"", "thawslip new saturday.toml\n"
              "thawslip check saturday.toml\n"
              "thawslip labels saturday.toml -o labels.pdf\n"
              "thawslip COMMAND --help shows more of a command; man thawslip shows all.\n"
              "Food safety: the rules of your local food authority come first.\n"
              "Exit status: 0 done, 1 refused, 2 wrong command line, 3 the system failed."},
    Notes{"new", "thawslip new saturday.toml\n"
                 "thawslip new saturday.toml --dishes 5 --kitchen \"Orchard house\"\n"
                 "thawslip new saturday.toml --dish \"Apple dumplings\" --dish \"Leek soup\""},
    Notes{"desk", "thawslip desk\n"
                  "thawslip desk ~/kitchen\n"
                  "thawslip desk saturday.toml\n"
                  "thawslip desk --no-open --port 8123\n"
                  "thawslip desk --kitchen 192.168.1.20  # phones may look into the freezer\n"
                  "thawslip desk --kitchen 192.168.1.20 --tls  # and use their cameras\n"
                  "The page is for browsers on this computer, and nothing leaves it, unless\n"
                  "--kitchen lets phones in: who is in the same network could then listen,\n"
                  "unless --tls encrypts it."},
    Notes{"help", "thawslip help\n"
                  "thawslip help label lost"},
    Notes{"setup", "thawslip setup\n"
                   "thawslip setup --yes --paper a4 --language de\n"
                   "thawslip setup --yes --label-printer roll --label-stock roll-100x150mm\n"
                   "An empty answer takes what is proposed. Answers may come from a file as\n"
                   "standard input, a line each."},
    Notes{"labels", "thawslip labels saturday.toml -o labels.pdf\n"
                    "thawslip labels saturday.toml --stock a4-2x4-99x68mm --print\n"
                    "thawslip labels saturday.toml -o labels.pdf --first-cell 2 --skip 4,6-8\n"
                    "thawslip labels saturday.toml --dish stew --bag 3-5 --print\n"
                    "thawslip labels saturday.toml --from 57 --first-cell next --print  # a jam\n"
                    "thawslip labels saturday.toml --only-new --first-cell next --print\n"
                    "thawslip labels saturday.toml --copies 2 -o labels.pdf  # bag and box\n"
                    "thawslip labels second-pot.toml -o labels.pdf --new-batch\n"
                    "thawslip labels saturday.toml --trial --print  # on plain paper first\n"
                    "Print at 100 %, never \"fit to page\". Stick labels on dry bags, before they\n"
                    "are filled, at room temperature."},
    Notes{"cards", "thawslip cards saturday.toml -o cards.pdf\n"
                   "thawslip cards saturday.toml --cook-day --stock a4-cards-a6-cut -o cards.pdf\n"
                   "thawslip cards saturday.toml --dish \"stew, chowder\" -o cards.pdf\n"
                   "thawslip cards saturday.toml --finishing --print kitchen\n"
                   "A dish in several sizes has a cook-day card for each."},
    Notes{"lists", "thawslip lists saturday.toml -o lists.pdf\n"
                   "thawslip lists saturday.toml --day --print\n"
                   "thawslip lists saturday.toml --by-station -o stations.pdf\n"
                   "thawslip lists saturday.toml sunday.toml --shopping -o shopping.pdf\n"
                   "thawslip lists saturday.toml --day --dish stew --print\n"
                   "thawslip lists --door --print  # of all that the archive has frozen\n"
                   "thawslip lists saturday.toml sunday.toml --door --paper a4 -o door.pdf"},
    Notes{"check", "thawslip check saturday.toml\n"
                   "thawslip check saturday.toml --why  # where each date comes from\n"
                   "thawslip check saturday.toml --why=all  # with all numbers\n"
                   "thawslip check saturday.toml --json\n"
                   "thawslip check saturday.toml --stock my-sheet.toml"},
    Notes{"foods", "thawslip foods\n"
                   "thawslip foods chicken\n"
                   "thawslip foods Hackfleisch --json"},
    Notes{"text", "thawslip text saturday.toml\n"
                  "thawslip text saturday.toml --stock roll-60x100mm"},
    Notes{"read", "thawslip read photo.jpg\n"
                  "thawslip read K7Q-2M4-9XW --json\n"
                  "thawslip read lentil stew\n"
                  "thawslip read -  # then let the scanner type, and press Ctrl-D"},
    Notes{"plan", "thawslip plan saturday.toml --eat \"2026-12-03 18:30\" --dish \"lentil stew\"\n"
                  "thawslip plan saturday.toml --eat \"2026-12-03 18:30\" --calendar plan.ics\n"
                  "thawslip plan saturday.toml --eat \"2026-12-03 18:30\" -o plan.pdf  # drawn\n"
                  "thawslip plan lentil stew --eat \"2026-12-03 18:30\"  # from the archive\n"
                  "thawslip plan photo.jpg --eat \"2026-12-03 18:30\"  # by the codes in it\n"
                  "thawslip plan saturday.toml --eat \"2026-12-03 18:30\" --bags 2 --json\n"
                  "A dish with several ways to thaw takes the first that serves; sides start\n"
                  "so that all is ready together."},
    Notes{"stock", "thawslip stock list\n"
                   "thawslip stock ruler -o ruler.pdf"},
    Notes{"stock list", "thawslip stock list"},
    Notes{"stock show", "thawslip stock show letter-2x5-4x2in\n"
                        "thawslip stock show my-sheet.toml -o my-sheet.pdf"},
    Notes{"stock ruler", "thawslip stock ruler -o ruler.pdf\n"
                         "thawslip stock ruler --paper a4 --print"},
    Notes{"reprint", "thawslip reprint K7Q-2M4-9XW -o label.pdf --first-cell 7\n"
                     "thawslip reprint \"lentil stew, plum compote\" --print\n"
                     "thawslip reprint --from K7Q-2M4-9XW --first-cell next --print\n"
                     "thawslip reprint --dish stew --card --only-new -o cards.pdf\n"
                     "thawslip reprint --printed 2026-10-17 --card -o cards.pdf"},
    Notes{"freezer", "thawslip freezer list\n"
                     "thawslip freezer find lentil\n"
                     "thawslip freezer out lentil stew --oldest\n"
                     "thawslip freezer undo"},
    Notes{"freezer list", "thawslip freezer list\n"
                          "thawslip freezer list --without \"milk, walnut\"\n"
                          "thawslip freezer list --all --json"},
    Notes{"freezer find", "thawslip freezer find lentil stew"},
    Notes{"freezer out",
          "thawslip freezer out lentil stew --oldest\n"
          "thawslip freezer out lentil stew, plum compote  # asks which, by numbers"},
    Notes{"freezer back", "thawslip freezer back lentil stew"},
    Notes{"freezer eaten", "thawslip freezer eaten lentil stew\n"
                           "thawslip freezer eaten chestnut --all"},
    Notes{"freezer discarded", "thawslip freezer discarded plum compote --oldest"},
    Notes{"freezer never-filled", "thawslip freezer never-filled lentil stew --oldest"},
    Notes{"freezer move", "thawslip freezer move lentil stew --all --to \"garage, basket 2\""},
    Notes{"freezer renamed", "thawslip freezer renamed \"lentil stew\" \"lentil and squash pot\""},
    Notes{"freezer undo", "thawslip freezer undo"},
    Notes{"freezer history", "thawslip freezer history lentil stew"},
    Notes{"freezer next", "thawslip freezer next\n"
                          "thawslip freezer next --serves 6 --days 5\n"
                          "thawslip freezer next 14 --at 12:30\n"
                          "thawslip freezer next --without \"milk, walnut\""},
    Notes{"archive", "thawslip archive check\n"
                     "thawslip archive backup archive-copy.db"},
    Notes{"archive check", "thawslip archive check"},
    Notes{"archive backup", "thawslip archive backup archive-copy.db"},
    Notes{"archive restore", "thawslip archive restore archive-copy.db"},
    Notes{"archive send", "thawslip archive send"},
    Notes{"archive sql", "thawslip archive sql"},
    Notes{"archive repair", "thawslip archive repair"},
    Notes{"archive export", "thawslip archive export archive-folder"},
    Notes{"archive import", "thawslip archive import archive-folder"},
    Notes{"archive merge", "thawslip archive merge other-kitchen.db\n"
                           "thawslip archive merge from-the-laptop.db --same-kitchen"},
};

/// The names from below the program to `app`: "stock show".
std::string words_of(const CLI::App& app) {
    const auto* parent = app.get_parent();
    if (parent == nullptr) {
        return {};
    }
    const auto above = words_of(*parent);
    return above.empty() ? app.get_name() : above + " " + app.get_name();
}

} // namespace

void add_examples(CLI::App& app) {
    const auto words = words_of(app);
    const auto* found = std::find_if(notes.begin(), notes.end(),
                                     [&words](const Notes& n) { return n.command == words; });
    app.footer(found == notes.end() ? "" : found->lines);
    for (auto* command : app.get_subcommands([](CLI::App*) { return true; })) {
        add_examples(*command);
    }
}

} // namespace thawslip::app
