// From a day's description to a PDF of labels: one use case, and where it finds what it asks for.
//     count_labels DAY.toml labels.pdf
#include <fstream>
#include <iostream>
#include <iterator>
#include <stdexcept>
#include <thawslip/render/pdf.h>
#include <thawslip/service/print/printing.h>
#include <thawslip/typeset/font_set.h>

using namespace thawslip;

namespace {

const std::string layouts = DATA_FOLDER "/layouts/";
const std::string faces = "/usr/share/fonts/truetype/";

std::string text_of(const std::string& file) {
    std::ifstream stream{file, std::ios::binary};
    if (!stream) {
        throw std::runtime_error{"cannot read " + file};
    }
    return {std::istreambuf_iterator{stream}, {}};
}

typeset::FontSet fonts() {
    auto set = typeset::make_font_set({{faces + "clear-sans/ClearSans-Regular.ttf"},
                                       {faces + "clear-sans/ClearSans-Medium.ttf"},
                                       {faces + "clear-sans/ClearSans-Bold.ttf"}});
    if (!set) {
        throw std::runtime_error{set.fault()};
    }
    return std::move(set).value();
}

/// The shipped stocks, one layout and three faces; no archive, and no files of the cook's own.
service::Surroundings surroundings() {
    service::Surroundings around;
    around.stock = [](const std::string& name) {
        return std::optional{layout::load_stock(layouts + "stock/" + name + ".toml")};
    };
    around.stocks = [] { return layout::load_stocks(layouts + "stock"); };
    around.layouts = [](const std::set<wording::Kind>&) {
        const auto file = layouts + "label/wide.toml";
        return std::vector<service::ShippedText>{{"wide", file, text_of(file)}};
    };
    around.fonts = fonts;
    return around;
}

int print(const std::string& day, const std::string& pdf) {
    const service::DayTexts days{{{day, text_of(day)}}, {}};
    const auto printing = print(days, service::What::Labels, {}, {}, surroundings());
    std::cerr << to_text(printing.messages);
    if (!printing) {
        return 1;
    }
    const auto& [plans, job, laid_out] = *printing.value;
    std::vector<layout::Frame> frames;
    for (int sheet = 0; sheet < laid_out.fitting.sheets; ++sheet) {
        frames.push_back(draw_sheet(laid_out, sheet));
    }
    std::ofstream{pdf, std::ios::binary}
        << render::pdf(frames, laid_out.setup.fonts, {job.title, job.language, std::nullopt});
    std::cout << job.prints.size() << " labels on " << frames.size() << " pages\n";
    return 0;
}

} // namespace

int main(int argc, char** argv) {
    try {
        return argc == 3 ? print(argv[1], argv[2]) : 2;
    } catch (const std::exception& failure) {
        std::cerr << failure.what() << "\n";
        return 1;
    }
}
