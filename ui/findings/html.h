// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"

#include <QString>
#include <QStringList>

/// The few pieces that the pages of words are put together from.
namespace stillbay::ui {

QString escaped(const std::string& text);
QString escaped(const Phrase& phrase);
QString headingHtml(const QString& text);  ///< of text that is HTML already, as below
QString paragraphHtml(const QString& text);
QString listHtml(const QStringList& items);

}  // namespace stillbay::ui
