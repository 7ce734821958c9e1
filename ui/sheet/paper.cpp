// SPDX-License-Identifier: MIT
#include "ui/sheet/paper.h"

#include <algorithm>
#include <array>

namespace stillbay::ui {
namespace {

constexpr std::array kLetterLands{QLocale::Belize,       QLocale::Canada,      QLocale::Chile,
                                  QLocale::Colombia,     QLocale::CostaRica,   QLocale::ElSalvador,
                                  QLocale::Guatemala,    QLocale::Mexico,      QLocale::Nicaragua,
                                  QLocale::Panama,       QLocale::Philippines, QLocale::PuertoRico,
                                  QLocale::UnitedStates, QLocale::Venezuela};

}  // namespace

Paper usualPaper(const QLocale& locale)
{
    const bool letter = std::find(kLetterLands.begin(), kLetterLands.end(), locale.territory()) !=
                        kLetterLands.end();
    return letter ? Paper::Letter : Paper::A4;
}

QPageLayout layoutOf(Paper paper)
{
    QPageLayout layout(QPageSize(paper == Paper::A4 ? QPageSize::A4 : QPageSize::Letter),
                       QPageLayout::Portrait, QMarginsF(), QPageLayout::Millimeter);
    layout.setMode(QPageLayout::FullPageMode);
    return layout;
}

}  // namespace stillbay::ui
