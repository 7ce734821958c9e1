// SPDX-License-Identifier: MIT
#include "core/base/shared_list.h"

#include <gtest/gtest.h>

namespace stillbay {
namespace {

// Oracle: definition; a copy is the same list until one of the two is changed.
TEST(SharedList, IsSharedUntilItIsChanged)
{
    SharedList<int> list(std::vector<int>{3, 1, 4});
    SharedList<int> copy = list;
    EXPECT_EQ(&copy.front(), &list.front());
    copy.own()[1] = 5;
    EXPECT_EQ(static_cast<const std::vector<int>&>(list), (std::vector<int>{3, 1, 4}));
    EXPECT_EQ(static_cast<const std::vector<int>&>(copy), (std::vector<int>{3, 5, 4}));
    const int* const kept = &copy.front();
    copy.own()[0] = 6;  // nobody else has it
    EXPECT_EQ(&copy.front(), kept);
    EXPECT_EQ(copy.size(), 3U);
    EXPECT_EQ(copy.back(), 4);
    EXPECT_TRUE(SharedList<int>().empty());
}

}  // namespace
}  // namespace stillbay
