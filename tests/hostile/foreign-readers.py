# Reads files by readers that are not this project's: XML, CSV, JSON and HTML of the standard library. Prints for each
# what it holds: counts of elements and their attributes, rows and cells, texts.
import csv
import io
import json
import sys
import xml.etree.ElementTree as tree
from html.parser import HTMLParser

csv.field_size_limit(10**7)


class Tags(HTMLParser):
    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.tags = {}
        self.attributes = {}

    def handle_starttag(self, tag, attrs):
        self.tags[tag] = self.tags.get(tag, 0) + 1
        for name, _ in attrs:
            self.attributes[name] = self.attributes.get(name, 0) + 1


def svg(text):
    count, texts, attributes = {}, [], {}
    for node in tree.fromstring(text).iter():
        name = node.tag.split("}")[-1]
        count[name] = count.get(name, 0) + 1
        for key in node.attrib:
            attributes[key] = attributes.get(key, 0) + 1
        if name in ("text", "title"):
            texts.append(node.text or "")
    return {"tags": count, "attributes": attributes, "texts": texts}


def table(text):
    return {"rows": list(csv.reader(io.StringIO(text, newline="")))}


def html(text):
    reader = Tags()
    reader.feed(text)
    reader.close()
    return {"tags": reader.tags, "attributes": reader.attributes}


READ = {"svg": svg, "csv": table, "json": json.loads, "html": html}
out = {}
for path in sys.argv[1:]:
    with open(path, encoding="utf-8", newline="") as file:
        out[path.rsplit("/", 1)[-1]] = READ[path.rsplit(".", 1)[-1]](file.read())
print(json.dumps(out))
