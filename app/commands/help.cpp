// SPDX-License-Identifier: MIT
#include "app/commands/help.h"

namespace stillbay {

std::string_view helpText()
{
    return "Stillbay tunes the silicone tubes that a camera bay hangs on.\n"
           "\n"
           "usage:\n"
           "  stillbay [FILE]     open the window, with the setup in FILE\n"
           "  stillbay report FILE [--json] [--throttle A:B:STEP] [--frequency A:B:STEP]\n"
           "                  [--airframe rigid|flexible] [--uncertainty]\n"
           "                      print the assessment of the setup in FILE\n"
           "  stillbay search FILE [--free-length A:B] [--stretch A:B] [--elevation A:B]\n"
           "                  [--height A:B] [--direction A:B] [--spread-x A:B] [--spread-y A:B]\n"
           "                  [--balance-x A:B] [--balance-z A:B]\n"
           "                  [--tube OUTER:BORE:SHORE]... [--map N:M] [--builds N] [--seed N]\n"
           "                  [--level|--no-level] [--json] [--output OUT] [--force]\n"
           "                      print the best tubes within limits, and the map\n"
           "  stillbay level FILE [--json] [--output OUT] [--force]\n"
           "                      print how to hang the bay so that it rests as drawn\n"
           "  stillbay calibrate FILE [--hang MASS_G:FREE_MM:LENGTH_MM]...\n"
           "                  [--pluck RECORDING [--column NAME]... [--rate HZ]\n"
           "                  [--phone MASS_G:X:Y:Z] [--phone-size X:Y:Z] [--axes X:Y:Z]]\n"
           "                  [--tap VERTICAL_HZ:HORIZONTAL_HZ:LOSS [--tap-free]]\n"
           "                  [--speed THROTTLE:RPM[:VOLT]]... [--note FROM:TO:GRADE]...\n"
           "                  [--json] [--output OUT] [--force]\n"
           "                      print what a measurement corrects, and how sure it is\n"
           "  stillbay sheet FILE --output OUT.pdf [--force] [--paper a4|letter] [--grip MM]\n"
           "                      write the build sheet: cut list, holes, drilling template\n"
           "  stillbay spectrum RECORDING [--column NAME] [--segment N] [--rate HZ]\n"
           "                  [--from S] [--to S] [--json]\n"
           "                      print what a recording holds at each frequency\n"
           "  stillbay ringdown RECORDING [--column NAME]... [--rate HZ] [--json]\n"
           "                      print frequency and loss of each mode that rings after a pluck\n"
           "  stillbay transfer RECORDING [--with OTHER] --input NAME --output NAME\n"
           "                  [--segment N] [--rate HZ] [--from S] [--to S] [--json]\n"
           "                      print what one sensor shows of another's motion\n"
           "  stillbay report --help, and the same of each command\n"
           "                      print what its options mean, with their units\n"
           "  stillbay --help     print this page\n"
           "  stillbay --version  print the version\n"
           "\n"
           "As FILE of a command, - is standard input. Lengths are in mm, angles in degrees,\n"
           "frequencies in Hz, throttles from 0 to 1 or in %.\n"
           "\n"
           "exit codes: 0 done, 1 the input is bad, 2 wrong usage, 3 no answer\n";
}

}  // namespace stillbay
