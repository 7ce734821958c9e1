// SPDX-License-Identifier: MIT
#include "ui/document/native_path.h"

#include "core/base/printable.h"

#include <QByteArray>
#include <QStringView>

namespace stillbay::ui {
namespace {

constexpr char16_t kBytes = 0xEF00;

bool isByte(QChar c)
{
    return c.unicode() >= kBytes + 0x80 && c.unicode() <= kBytes + 0xFF;
}

}  // namespace

QString pathFrom(std::string_view native)
{
    QString path;
    while (!native.empty()) {
        const std::size_t length = utf8Length(native);
        const std::string_view one = native.substr(0, length == 0 ? 1 : length);
        const QString character = QString::fromUtf8(one.data(), static_cast<qsizetype>(one.size()));
        if (length == 0 || (character.size() == 1 && isByte(character[0])))
            for (const char byte : one)
                path += QChar(static_cast<char16_t>(kBytes + static_cast<unsigned char>(byte)));
        else
            path += character;
        native.remove_prefix(one.size());
    }
    return path;
}

std::string nativePath(const QString& path)
{
    std::string native;
    qsizetype from = 0;
    for (qsizetype at = 0; at <= path.size(); ++at) {
        if (at < path.size() && !isByte(path[at]))
            continue;
        native += QStringView(path).mid(from, at - from).toUtf8().toStdString();
        if (at < path.size())
            native += static_cast<char>(path[at].unicode() - kBytes);
        from = at + 1;
    }
    return native;
}

}  // namespace stillbay::ui
