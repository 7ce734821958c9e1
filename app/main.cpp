// SPDX-License-Identifier: MIT
#include "app/commands/help.h"

#include <iostream>
#include <string>
#include <vector>

int main(int argc, char* argv[])
{
    const std::vector<std::string> arguments(argv + 1, argv + argc);

    // Answered before there is an application: without a display, making one ends the program.
    if (arguments.size() == 1 && arguments[0] == "--version") {
        std::cout << "stillbay " STILLBAY_VERSION "\n";
        return 0;
    }
    if (arguments.size() == 1 && arguments[0] == "--help") {
        std::cout << stillbay::helpText();
        return 0;
    }
    std::cerr << "stillbay: wrong usage, see --help: the command line\n";
    return 2;
}
