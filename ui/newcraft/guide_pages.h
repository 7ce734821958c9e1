// SPDX-License-Identifier: MIT
#pragma once

#include "core/newcraft/answers.h"

#include <QObject>
#include <QString>

#include <vector>

namespace stillbay::ui {

class Question;

/// One page of the guide: what it is about, what for, and what it asks.
struct GuidePage {
    QString title, purpose;
    std::vector<Question*> questions;
};

/// The five pages, in their order. The questions write into the answers, which outlive them.
std::vector<GuidePage> guidePages(CraftAnswers& answers, QObject* parent);

}  // namespace stillbay::ui
