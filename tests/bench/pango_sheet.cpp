// The same sheet by the general road, to measure against: Pango sets the words, Cairo writes the
// PDF, qrcodegen draws the code. No sizes are looked for: they are given as Thawslip found them.
//
// usage: pango_sheet LABELS OUTPUT.pdf

#include <cairo-pdf.h>
#include <cstdlib>
#include <fmt/format.h>
#include <pango/pangocairo.h>
#include <qrcodegen/qrcodegen.hpp>
#include <string>

namespace {

using qrcodegen::QrCode;

constexpr double inch = 72.0;
constexpr int labels_a_sheet = 10;

/// Draws labels of one layout object, which is how Pango is meant to be used.
class Sheet {
public:
    explicit Sheet(const std::string& output)
        : surface_{cairo_pdf_surface_create(output.c_str(), 8.5 * inch, 11 * inch)},
          cairo_{cairo_create(surface_)}, layout_{pango_cairo_create_layout(cairo_)} {}
    Sheet(const Sheet&) = delete;
    Sheet& operator=(const Sheet&) = delete;
    ~Sheet() {
        g_object_unref(layout_);
        cairo_destroy(cairo_);
        cairo_surface_destroy(surface_);
    }

    void draw(int number, int count) {
        const int cell = number % labels_a_sheet;
        left_ = (0.15625 + 4.1875 * (cell % 2)) * inch;
        top_ = (0.5 + 2.0 * (cell / 2)) * inch;
        write("Clear Sans Bold", 12.7, 7, 4, 195, "Squash and red lentil stew 0");
        write("Clear Sans Bold", 7.5, 7, 23, 90, "Made");
        write("Clear Sans Bold", 10, 7, 32, 90, "17 Oct 2026");
        write("Clear Sans Bold", 7.5, 75, 23, 90, "Best if used by");
        write("Clear Sans Bold", 10, 75, 32, 90, "17 Dec 2026");
        write("Clear Sans", 7.56, 7, 48, 185,
              "Thaw in the refrigerator, a full day; 24 h for every 2 kg\n"
              "Add at the start: 1 l vegetable stock\n"
              "Add last 10 min: 200 g baby spinach (small bag taped to this one)\n"
              "Cook slow cooker, low, 7–9 h, to 74 °C in the middle\nContains celery");
        write("Clear Sans", 6.64, 7, 128, 185, "Local food-safety rules come first.");
        const auto bag = fmt::format("RJR-{:03}-{:03}", number / 1000 % 1000, number % 1000);
        write("Clear Sans", 7.56, 205, 96, 80,
              fmt::format("{}\nServes 6\nBag {} of {}", bag, number + 1, count));
        code(fmt::format("SQUASH AND RED LENTIL STEW 0\nSERVES 6 * BAG {} * MADE 17 OCT 2026 * "
                         "BEST BY 17 DEC 2026\nTHAW IN REFRIGERATOR\nAT START ADD 1 L VEGETABLE "
                         "STOCK\nLAST 10 MIN ADD 200 G BABY SPINACH * SMALL BAG TAPED TO THIS "
                         "ONE\nCOOK IN SLOW COOKER * AT LOW * FOR 7-9 H * TO 74 C\nCONTAINS "
                         "CELERY\nEND 1PGT\n",
                         bag),
             205, 12, 1.2);
        if (cell == labels_a_sheet - 1 || number == count - 1) {
            cairo_show_page(cairo_);
        }
    }

private:
    void write(const char* face, double size, double x, double y, double width,
               const std::string& words) {
        PangoFontDescription* font = pango_font_description_from_string(face);
        pango_font_description_set_absolute_size(font, size * PANGO_SCALE);
        pango_layout_set_font_description(layout_, font);
        pango_font_description_free(font);
        pango_layout_set_width(layout_, static_cast<int>(width * PANGO_SCALE));
        pango_layout_set_text(layout_, words.c_str(), -1);
        cairo_move_to(cairo_, left_ + x, top_ + y);
        pango_cairo_show_layout(cairo_, layout_);
    }

    void code(const std::string& text, double x, double y, double module) {
        const auto symbol = QrCode::encodeText(text.c_str(), QrCode::Ecc::LOW);
        // Dark modules that stand side by side are one rectangle: a third of the bytes and time.
        for (int row = 0; row < symbol.getSize(); ++row) {
            for (int from = 0, to = 0; from < symbol.getSize(); from = to + 1) {
                to = from;
                while (symbol.getModule(to, row)) {
                    ++to; // beyond the symbol every module is light
                }
                if (to > from) {
                    cairo_rectangle(cairo_, left_ + x + from * module, top_ + y + row * module,
                                    (to - from) * module, module);
                }
            }
        }
        cairo_fill(cairo_);
    }

    cairo_surface_t* surface_;
    cairo_t* cairo_;
    PangoLayout* layout_;
    double left_ = 0.0;
    double top_ = 0.0;
};

} // namespace

int main(int argc, char** argv) {
    if (argc != 3) {
        fmt::print(stderr, "usage: pango_sheet LABELS OUTPUT.pdf\n");
        return 2;
    }
    const int count = std::atoi(argv[1]);
    Sheet sheet{argv[2]};
    for (int number = 0; number < count; ++number) {
        sheet.draw(number, count);
    }
}
