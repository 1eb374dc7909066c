#include "code/message.h"
#include "unit/code/random_messages.h"
#include "unit/code/samples.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace thawslip::code;
using thawslip::code::test::Random;

TEST_CASE("a bag's text reads as instructions") {
    CHECK(write(test::squash_stew()) ==
          "SQUASH AND RED LENTIL STEW\n"
          "SERVES 6 * BAG 7K2M-9 * MADE 17 OCT 2026 * BEST BY 17 JAN 2027\n"
          "THAW IN REFRIGERATOR\n"
          "AT START ADD 1 L VEGETABLE STOCK\n"
          "LAST 10 MIN ADD 200 G BABY SPINACH * SMALL BAG\n"
          "COOK IN SLOW COOKER * AT LOW * FOR 7-9 H * TO 74 C\n"
          "STEPS TIP THE THAWED BAG INTO THE COOKER * STIR IN THE STOCK\n"
          "CONTAINS CELERY\n"
          "END 1JQD");
}

TEST_CASE("what is written is read back as the same values") {
    Random random{1};
    for (int i = 0; i < 5000; ++i) {
        const Message message = folded(test::random_message(random));
        const std::string text = write(message);
        CAPTURE(text);
        const auto read = parse(text);
        REQUIRE(read.ok());
        CHECK(read.value() == message);
        CHECK(folded(message) == message);
    }
}
