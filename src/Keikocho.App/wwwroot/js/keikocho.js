// Every page works without this. It opens the print dialogue for buttons that ask for it.
document.addEventListener("click", (event) => {
  if (event.target instanceof Element && event.target.closest("[data-print]")) window.print();
});
