// SPDX-License-Identifier: MIT
// Writes the sample recordings, and the pictures of them: make_samples FOLDER [PICTURES]. Build
// target make_samples, which is not built unless asked for.
#include "tests/assess/crafts.h"
#include "tests/recordings/sample_film.h"
#include "tests/recordings/samples.h"

#include <exception>
#include <iostream>

int main(int argc, char** argv)
{
    if (argc != 2 && argc != 3) {
        std::cerr << "make_samples FOLDER [PICTURES]\n";
        return 2;
    }
    try {
        const stillbay::Setup reedbed = stillbay::test::sampleCraft("reedbed");
        stillbay::test::writeSamples(reedbed, argv[1]);
        stillbay::test::writeFilms(reedbed, argv[1]);
        if (argc == 3)
            stillbay::test::writePictures(argv[1], argv[2]);
    } catch (const std::exception& error) {
        std::cerr << "make_samples: " << error.what() << '\n';
        return 1;
    }
}
