// SPDX-License-Identifier: MIT
#pragma once

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

/// Tables of a documentation page that are made from the program's own tables.
namespace stillbay::test {

/// Replaces what stands between "<!-- MARK -->" and "<!-- end -->".
inline void putTable(std::string& page, const std::string& mark, const std::string& table)
{
    const std::string begin = "<!-- " + mark + " -->\n";
    const std::size_t from = page.find(begin);
    ASSERT_NE(from, std::string::npos) << "no marker " << begin;
    const std::size_t start = from + begin.size();
    const std::size_t end = page.find("<!-- end -->", start);
    ASSERT_NE(end, std::string::npos) << "no end after " << begin;
    page.replace(start, end - start, table);
}

/// Expects the page as it is written to be the page as it should be; with STILLBAY_UPDATE_DOCS=1
/// in the environment it writes it instead.
inline void expectPage(const std::filesystem::path& path, const std::string& written,
                       const std::string& page)
{
    if (std::getenv("STILLBAY_UPDATE_DOCS"))
        std::ofstream(path, std::ios::binary) << page;
    else
        EXPECT_TRUE(page == written)
            << path << " is out of date: run this test with STILLBAY_UPDATE_DOCS=1";
}

}  // namespace stillbay::test
