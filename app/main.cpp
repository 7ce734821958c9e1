// SPDX-License-Identifier: MIT
#include "app/commands/calibrate.h"
#include "app/commands/command.h"
#include "app/commands/film.h"
#include "app/commands/help.h"
#include "app/commands/level.h"
#include "app/commands/report.h"
#include "app/commands/ringdown.h"
#include "app/commands/search.h"
#include "app/commands/sheet.h"
#include "app/commands/spectrum.h"
#include "app/commands/transfer.h"
#include "core/base/printable.h"
#include "ui/sheet/sheet_file.h"
#include "ui/window/run_window.h"

#include <csignal>
#include <exception>
#include <iostream>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace {

using Arguments = std::span<const std::string_view>;

int openWindow(Arguments files, int argc, char** argv)
{
    if (files.size() > 1)
        return stillbay::usageError(std::cerr, "one craft at a time", files[1]);
    const std::string path(files.empty() ? std::string_view() : files.front());
    return stillbay::ui::runWindow(argc, argv, path, STILLBAY_VERSION);
}

int writeSheet(Arguments arguments, int argc, char** argv)
{
    const auto write = [argc, argv](const stillbay::SheetOrder& order) {
        using stillbay::SheetPaper, stillbay::ui::Paper;
        std::optional<Paper> paper;
        if (order.paper != SheetPaper::OfTheLocale)
            paper = order.paper == SheetPaper::A4 ? Paper::A4 : Paper::Letter;
        stillbay::WriteOptions options;
        if (!order.replace)
            options.taken = stillbay::alreadyThere();
        return stillbay::ui::saveSheetWithoutDisplay(
            argc, argv, {order.setup, order.assessment, order.grip_mm, {}}, paper, order.output,
            options);
    };
    return stillbay::runSheet(arguments, write, std::cout, std::cerr);
}

// Everything that needs no window is answered before there is a Qt application, which would end
// the program where there is no display.
int run(Arguments arguments, int argc, char** argv)
{
    if (arguments.empty())
        return openWindow({}, argc, argv);
    const std::string_view first = arguments.front();
    if (first == "--version")
        return stillbay::print(std::cout, "stillbay " STILLBAY_VERSION "\n", std::cerr);
    if (first == "--help" || first == "-h")
        return stillbay::print(std::cout, stillbay::helpText(), std::cerr);
    if (first == "report")
        return stillbay::runReport(arguments.subspan(1), std::cout, std::cerr);
    if (first == "search")
        return stillbay::runSearch(arguments.subspan(1), std::cout, std::cerr);
    if (first == "level")
        return stillbay::runLevel(arguments.subspan(1), std::cout, std::cerr);
    if (first == "calibrate")
        return stillbay::runCalibrate(arguments.subspan(1), std::cout, std::cerr);
    if (first == "spectrum")
        return stillbay::runSpectrum(arguments.subspan(1), std::cout, std::cerr);
    if (first == "ringdown")
        return stillbay::runRingDown(arguments.subspan(1), std::cout, std::cerr);
    if (first == "transfer")
        return stillbay::runTransfer(arguments.subspan(1), std::cout, std::cerr);
    if (first == "film")
        return stillbay::runFilm(arguments.subspan(1), std::cout, std::cerr);
    if (first == "sheet")
        return writeSheet(arguments.subspan(1), argc, argv);
    if (first == "--")
        return openWindow(arguments.subspan(1), argc, argv);
    if (first.starts_with('-'))
        return stillbay::usageError(std::cerr, "unknown option, see --help", first);
    return openWindow(arguments, argc, argv);
}

}  // namespace

int main(int argc, char* argv[])
{
    std::signal(SIGXFSZ, SIG_IGN);  // a file that grows too large is an error, not the end
    const std::vector<std::string_view> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
    try {
        return run(arguments, argc, argv);
    } catch (const std::exception& exception) {
        std::cerr << "stillbay: a fault in the program: " << stillbay::printable(exception.what())
                  << '\n';
        return stillbay::kExitNoAnswer;
    }
}
