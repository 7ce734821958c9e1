// SPDX-License-Identifier: MIT
#pragma once

#include <QTranslator>

namespace stillbay::ui {

/// The texts of the user's language, as far as there is a translation, for as long as this lives.
/// Make it after the application and before any window.
class Translations final {
public:
    Translations();

private:
    QTranslator m_ours;
    QTranslator m_qts;  ///< Qt's own buttons and dialogs
};

}  // namespace stillbay::ui
