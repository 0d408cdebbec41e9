// The same page in another language takes along what this one has been asked. Markup: templates/frame.html.
for (const same of document.querySelectorAll<HTMLAnchorElement>("a[hreflang][lang]"))
  same.onclick = () => {
    same.search = location.search;
    same.hash = location.hash;
  };

export {}; // a module
