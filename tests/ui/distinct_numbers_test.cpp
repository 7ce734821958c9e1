// SPDX-License-Identifier: MIT
#include "ui/widgets/distinct_numbers.h"

#include <QLocale>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

namespace stillbay::ui {
namespace {

struct DistinctNumbers : testing::Test {
    DistinctNumbers() { QLocale::setDefault(QLocale::c()); }

    static QStringList read(const std::vector<double>& values, int least, int most)
    {
        return distinctNumbers(values, least, most);
    }
};

// Oracle: definition, by hand.
TEST_F(DistinctNumbers, GrowUntilWhatDiffersReadsDifferently)
{
    EXPECT_EQ(read({27.5, 30.0}, 1, 3), QStringList({"27.5", "30.0"}));
    EXPECT_EQ(read({27.5, 27.53}, 1, 3), QStringList({"27.50", "27.53"}));
    EXPECT_EQ(read({0.4441, 0.4443, 12.0}, 2, 4), QStringList({"0.4441", "0.4443", "12.0000"}));
    EXPECT_EQ(read({3.81, 3.81}, 2, 4), QStringList({"3.81", "3.81"}));
}

// Oracle: by hand; also where fewer decimals would tear apart what more of them join.
TEST_F(DistinctNumbers, StopAtASensibleLimit)
{
    EXPECT_EQ(read({1.0, 1.00001}, 1, 3), QStringList({"1.0", "1.0"}));
    EXPECT_EQ(read({2.4449999, 2.4450001}, 2, 3), QStringList({"2.445", "2.445"}));
}

TEST_F(DistinctNumbers, SayNothingOfWhatIsNotThereAndNoMinusZero)
{
    const double none = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(read({none, 1.0}, 1, 3), QStringList({"—", "1.0"}));
    EXPECT_EQ(read({-0.01, 0.0, -4.0}, 1, 1), QStringList({"0.0", "0.0", "-4.0"}));
    EXPECT_TRUE(read({}, 1, 3).isEmpty());
}

}  // namespace
}  // namespace stillbay::ui
