// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"
#include "core/setup/text.h"

#include <QByteArray>
#include <QFile>
#include <QString>

namespace stillbay::ui {

inline QString samplePath(const char* name)
{
    return QStringLiteral(STILLBAY_SAMPLES_DIR "/") + QString::fromLatin1(name) +
           QStringLiteral(".stillbay");
}

inline QByteArray fileBytes(const QString& path)
{
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

inline Setup sampleSetup(const char* name)
{
    return readSetup(fileBytes(samplePath(name)).toStdString()).value().setup;
}

inline constexpr const char* kSampleNames[] = {"quarry", "reedbed", "saltmarsh"};

}  // namespace stillbay::ui
