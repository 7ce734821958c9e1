// SPDX-License-Identifier: MIT
#include <gtest/gtest.h>

#include <clocale>
#include <cstdio>

// Takes the language of the environment, as a window's application does: what the numbers' rooms
// write must not depend on it. A language that is not there would be no test.
int main(int argc, char** argv)
{
    testing::InitGoogleTest(&argc, argv);
    if (!std::setlocale(LC_ALL, "")) {
        std::fputs("the language that the environment names is not installed\n", stderr);
        return 1;
    }
    return RUN_ALL_TESTS();
}
