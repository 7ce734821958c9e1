// SPDX-License-Identifier: MIT
#include "core/base/format.h"

#include <gtest/gtest.h>

#include <clocale>
#include <cstdlib>
#include <string>

namespace stillbay {
namespace {

// Oracle: the C standard's conversions in the C locale. The suite runs this under a language with
// a decimal comma too.
TEST(Formatted, HasADecimalPointInEveryLanguage)
{
    EXPECT_EQ(formatted("%.2f|%g|%+.3g|%.1e", 27.5, 0.125, -3.25, 1234.5),
              "27.50|0.125|-3.25|1.2e+03");
    EXPECT_EQ(formatted("%d of %s", 3, "3,5 mm"), "3 of 3,5 mm");
    EXPECT_EQ(toText(27.5), "27.5");
}

// Oracle: definition. The rest of the process keeps its language.
TEST(Formatted, LeavesTheLanguageOfTheProcess)
{
    const std::string point = std::localeconv()->decimal_point;
    formatted("%g", 0.5);
    EXPECT_EQ(std::localeconv()->decimal_point, point);
    if (const char* const wanted = std::getenv("STILLBAY_DECIMAL_POINT")) {
        EXPECT_EQ(point, wanted);  // the run in another language really is one
    }
}

}  // namespace
}  // namespace stillbay
