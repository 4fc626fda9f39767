# Reads a page as HTML: prints its elements, the text of its heading and everything that an element would fetch.
import json
import sys
from html.parser import HTMLParser


class Reader(HTMLParser):
    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.tags = {}
        self.handlers = []
        self.fetched = []
        self.heading = ""
        self.title = ""
        self.inside = None
        self.policy = ""

    def handle_starttag(self, tag, attrs):
        self.tags[tag] = self.tags.get(tag, 0) + 1
        self.inside = tag
        named = dict(attrs)
        self.handlers += [name for name in named if name.startswith("on")]
        self.fetched += [v for k, v in attrs if k in ("src", "href", "action", "srcset", "data") and v]
        if named.get("http-equiv") == "Content-Security-Policy":
            self.policy = named["content"]

    def handle_endtag(self, tag):
        self.inside = None

    def handle_data(self, data):
        if self.inside == "h1":
            self.heading += data
        if self.inside == "title" and "body" not in self.tags:
            self.title += data


reader = Reader()
reader.feed(open(sys.argv[1], encoding="utf-8").read())
reader.close()
keys = ("tags", "handlers", "fetched", "heading", "title", "policy")
print(json.dumps({key: getattr(reader, key) for key in keys}))
